//! Folding of text for search: case and accents away, words apart.

/// Appends the folded form of one character: lower case, Latin letters without their accents, marks dropped.
fn fold_character(character: char, folded: &mut Vec<char>) {
    let plain = match character {
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
        // The library's tables of every script would take ten kilobytes of program; these two ranges are what makers
        // write in beside Latin. Other scripts are searched as they are typed.
        'Α'..='Ω' | 'А'..='Я' => {
            folded.extend(char::from_u32(character as u32 + 0x20));
            return;
        }
        'Ѐ'..='Џ' => {
            folded.extend(char::from_u32(character as u32 + 0x50));
            return;
        }
        'ς' => "σ",
        _ => {
            folded.push(character);
            return;
        }
    };
    folded.extend(plain.chars());
}

/// A text as it is sorted and compared: lower case, Latin letters without their accents, words with one space between.
///
/// ```
/// assert!(stillroom_catalogue::folded("Épinard, feuille") < stillroom_catalogue::folded("fenouil"));
/// ```
#[must_use]
pub fn folded(text: &str) -> String {
    let mut folded = String::new();
    each_word(text, &mut Vec::new(), |word| {
        if !folded.is_empty() {
            folded.push(' ');
        }
        folded.extend(word);
    });
    folded
}

/// Whether a character belongs to a word: a letter or digit, or a mark on one. Signs and spaces part words.
pub fn belongs_to_word(character: char) -> bool {
    match character {
        '\0'..='\x7f' => character.is_ascii_alphanumeric(),
        // Latin-1 signs, general punctuation and currency, arrows to symbols, CJK punctuation, full-width signs.
        '\u{80}'..='\u{bf}' | '×' | '÷' => matches!(character, 'ª' | 'µ' | 'º'),
        '\u{2000}'..='\u{206f}'
        | '\u{20a0}'..='\u{20cf}'
        | '\u{2190}'..='\u{2bff}'
        | '\u{3000}'..='\u{303f}'
        | '\u{e000}'..='\u{f8ff}'
        | '\u{fe00}'..='\u{fe6f}'
        | '\u{ff00}'..='\u{ff0f}'
        | '\u{1f000}'..='\u{1faff}' => false,
        _ => true,
    }
}

/// Folds `text` and hands each word of it to `word`. A word is a run of letters and digits.
pub fn each_word(text: &str, scratch: &mut Vec<char>, mut word: impl FnMut(&[char])) {
    scratch.clear();
    for character in text.chars() {
        if belongs_to_word(character) {
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
        assert_eq!(words("Масло ШИПОВНИКА, Ёлка; ΈΛΑΙΟ"), ["масло", "шиповника", "ёлка", "Έλαιο"]);
        assert_eq!(words("50 %–60 % × 薔薇水"), ["50", "60", "薔薇水"]);
        assert_eq!(words("  ,;"), Vec::<String>::new());
    }
}
