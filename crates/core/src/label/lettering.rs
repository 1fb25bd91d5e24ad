//! How large letters on a label have to be.

use super::declaration::Market;
use crate::source::Citation;

/// Millimetres of an inch.
const INCH: f64 = 25.4;
/// Square millimetres of a square inch.
const SQUARE_INCH: f64 = INCH * INCH;
/// Square millimetres of a square centimetre.
const SQUARE_CENTIMETRE: f64 = 100.0;

/// The least height of letters, and where that was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Least {
    /// Millimetres: of a small letter without strokes above or below its line, as o or x; of the contents, of its figures.
    pub millimetres: f64,
    /// Where it was found.
    pub citation: Citation,
    /// Whether the law of the market asks for it; otherwise it is taken over from elsewhere as a yardstick.
    pub is_law: bool,
}

/// How large letters have to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lettering {
    /// Small letters of the ingredients, the cautions and everything else that has to be there.
    pub text: Least,
    /// Figures of the contents.
    pub contents: Least,
}

/// What a container holds, by mass or by volume.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NetContents(
    /// In grams or millilitres.
    pub f64,
);

/// The least heights on a label of so many square millimetres, of which the part a buyer sees first has `panel`.
///
/// United States: 21 CFR 701.3(b): not less than 1/16 inch, 1/32 where less than 12 square inches can carry a label;
/// 21 CFR 701.13: contents by the area of the principal display panel. The letter that is measured is the small o where
/// small letters are used.
///
/// European Union and United Kingdom: Article 19(1) of Regulation (EC) No 1223/2009 asks for easily legible lettering and
/// names no height. The heights of Regulation (EU) No 1169/2011 for food, Article 13(2) and (3), serve as a yardstick:
/// 1.2 mm of the small x, 0.9 mm where the largest surface is below 80 cm² (common practice). Contents: Directive
/// 76/211/EEC, Annex I, 3.1.
#[must_use]
pub fn lettering(market: Market, area: f64, panel: f64, contents: NetContents) -> Lettering {
    match market {
        Market::EuropeanUnion | Market::UnitedKingdom => Lettering {
            text: Least {
                millimetres: if area < 80.0 * SQUARE_CENTIMETRE { 0.9 } else { 1.2 },
                citation: Citation::recalled("Regulation (EU) No 1169/2011 Art. 13(2) and (3), for food"),
                is_law: false,
            },
            contents: Least {
                millimetres: match contents.0 {
                    held if held <= 50.0 => 2.0,
                    held if held <= 200.0 => 3.0,
                    held if held <= 1000.0 => 4.0,
                    _ => 6.0,
                },
                citation: Citation::recalled("Directive 76/211/EEC, Annex I, 3.1"),
                is_law: true,
            },
        },
        Market::UnitedStates => Lettering {
            text: Least {
                millimetres: if area < 12.0 * SQUARE_INCH { INCH / 32.0 } else { INCH / 16.0 },
                citation: Citation::published("21 CFR 701.3(b)"),
                is_law: true,
            },
            contents: Least {
                millimetres: match panel / SQUARE_INCH {
                    area if area <= 5.0 => INCH / 16.0,
                    area if area <= 25.0 => INCH / 8.0,
                    // Three inches are 76.2 mm.
                    area if area <= 100.0 => 76.2 / 16.0,
                    _ => INCH / 4.0,
                },
                citation: Citation::recalled("21 CFR 701.13; Fair Packaging and Labeling Act"),
                is_law: true,
            },
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn heights(market: Market, area: f64, panel: f64, contents: f64) -> (f64, f64) {
        let letters = lettering(market, area, panel, NetContents(contents));
        (letters.text.millimetres, letters.contents.millimetres)
    }

    #[test]
    fn heights_follow_the_tables_at_their_edges() {
        use Market::{EuropeanUnion as Eu, UnitedStates as Us};
        assert_eq!(heights(Eu, 7999.0, 1.0, 50.0), (0.9, 2.0));
        assert_eq!(heights(Eu, 8000.0, 1.0, 50.1), (1.2, 3.0));
        assert_eq!((heights(Eu, 1.0, 1.0, 200.0).1, heights(Eu, 1.0, 1.0, 1000.0).1), (3.0, 4.0));
        assert_eq!(heights(Eu, 1.0, 1.0, 1000.1), (0.9, 6.0));
        // 12 square inches are 77.42 cm², 5 are 32.26, 25 are 161.29, 100 are 645.16.
        assert_eq!(heights(Us, 7741.0, 3225.0, 50.0), (0.79375, 1.5875));
        assert_eq!(heights(Us, 7743.0, 3227.0, 50.0), (1.5875, 3.175));
        assert_eq!((heights(Us, 1.0, 16130.0, 1.0).1, heights(Us, 1.0, 64520.0, 1.0).1), (4.7625, 6.35));
    }
}
