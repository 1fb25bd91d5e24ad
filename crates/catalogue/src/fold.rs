//! Folding of text for search: case and accents away, words apart.

/// Appends the folded form of one character: lower case, Latin letters without their accents, marks dropped.
fn fold_character(character: char, folded: &mut Vec<char>) {
    let plain = match character {
        'a'..='z' | '0'..='9' => {
            folded.push(character);
            return;
        }
        'A'..='Z' => {
            folded.push(character.to_ascii_lowercase());
            return;
        }
        // Combining marks, so that a composed and a decomposed accent fold alike.
        '\u{300}'..='\u{36f}' => "",
        'À'..='Å' | 'à'..='å' | 'Ā'..='ą' => "a",
        'Æ' | 'æ' => "ae",
        'Ç' | 'ç' | 'Ć'..='č' => "c",
        'Ð' | 'ð' | 'Ď'..='đ' => "d",
        'È'..='Ë' | 'è'..='ë' | 'Ē'..='ě' => "e",
        'Ĝ'..='ģ' => "g",
        'Ĥ'..='ħ' => "h",
        'Ì'..='Ï' | 'ì'..='ï' | 'Ĩ'..='ı' => "i",
        'Ĵ' | 'ĵ' => "j",
        'Ķ'..='ĸ' => "k",
        'Ĺ'..='ł' => "l",
        'Ñ' | 'ñ' | 'Ń'..='ŋ' => "n",
        'Ò'..='Ö' | 'Ø' | 'ò'..='ö' | 'ø' | 'Ō'..='ő' => "o",
        'Œ' | 'œ' => "oe",
        'Ŕ'..='ř' => "r",
        'Ś'..='š' | 'Ș' | 'ș' => "s",
        'ß' | 'ẞ' => "ss",
        'Ţ'..='ŧ' | 'Ț' | 'ț' => "t",
        'Ù'..='Ü' | 'ù'..='ü' | 'Ũ'..='ų' => "u",
        'Ŵ' | 'ŵ' => "w",
        'Ý' | 'ý' | 'ÿ' | 'Ŷ'..='Ÿ' => "y",
        'Ź'..='ž' => "z",
        'Þ' | 'þ' => "th",
        _ => {
            folded.extend(character.to_lowercase());
            return;
        }
    };
    folded.extend(plain.chars());
}

/// Folds `text` and hands each word of it to `word`. A word is a run of letters and digits.
pub fn each_word(text: &str, scratch: &mut Vec<char>, mut word: impl FnMut(&[char])) {
    scratch.clear();
    for character in text.chars() {
        let mark = ('\u{300}'..='\u{36f}').contains(&character);
        if character.is_alphanumeric() || mark {
            fold_character(character, scratch);
        } else if !scratch.is_empty() {
            word(scratch);
            scratch.clear();
        }
    }
    if !scratch.is_empty() {
        word(scratch);
        scratch.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::each_word;

    fn words(text: &str) -> Vec<String> {
        let mut words = Vec::new();
        each_word(text, &mut Vec::new(), |word| words.push(word.iter().collect()));
        words
    }

    #[test]
    fn case_accents_and_signs_fold_away() {
        assert_eq!(words("Huile d’Églantier (CO₂)"), ["huile", "d", "eglantier", "co₂"]);
        assert_eq!(words("e\u{301}glantier ROSE-hip ß Œillet"), ["eglantier", "rose", "hip", "ss", "oeillet"]);
        assert_eq!(words("  ,;"), Vec::<String>::new());
    }
}
