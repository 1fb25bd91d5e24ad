//! Colour from a photo: read against a white, compared with day 0, and how fast it fades.

use crate::decay::{Decay, DecayError, ReadingAt, fit};
use palette::color_difference::Ciede2000 as _;
use palette::white_point::D65;
use palette::{FromColor as _, Lab, LinSrgb, Srgb};

/// Standard deviation of a chroma read from a phone's photo against a white in the same light, in CIELAB units.
///
/// *Source*: common practice; nothing published was found for phones in general. Reading the same patch twice in two
/// lights shows what it is for yours.
pub const CHROMA_ACCURACY: f64 = 1.5;

/// A difference a trained eye can just see side by side, in CIEDE2000 units. *Source*: common practice.
pub const JUST_SEEN: f64 = 1.0;

/// A colour in CIELAB under the illuminant D65.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Colour {
    /// Lightness, 0 to 100.
    pub lightness: f64,
    /// Green to red.
    pub a: f64,
    /// Blue to yellow.
    pub b: f64,
}

/// What a camera gave for a patch: red, green and blue as sRGB writes them, 0 to 255.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patch {
    /// Red, green and blue.
    pub channels: [f64; 3],
}

/// Why a photo gives no colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum ColourError {
    /// No pixel, or not four bytes for each.
    #[error("no pixels")]
    NoPixels,
    /// A channel of the white is at its end: how white it is cannot be told.
    #[error("the white is overexposed")]
    WhiteOverexposed,
    /// The white is too dark to divide by.
    #[error("the white is too dark")]
    WhiteTooDark,
    /// The sample is lighter than the white.
    #[error("the sample is lighter than the white")]
    LighterThanWhite,
}

impl ColourError {
    /// Every code of this error.
    pub const CODES: [&'static str; 4] =
        ["colour.no-pixels", "colour.white-overexposed", "colour.white-too-dark", "colour.lighter-than-white"];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoPixels => "colour.no-pixels",
            Self::WhiteOverexposed => "colour.white-overexposed",
            Self::WhiteTooDark => "colour.white-too-dark",
            Self::LighterThanWhite => "colour.lighter-than-white",
        }
    }
}

/// Mean of a patch of pixels, four bytes each (red, green, blue, opacity), taken in linear light.
///
/// # Errors
/// `colour.no-pixels`.
pub fn mean_of_pixels(bytes: &[u8]) -> Result<Patch, ColourError> {
    if bytes.is_empty() || !bytes.len().is_multiple_of(4) {
        return Err(ColourError::NoPixels);
    }
    let mut sum = LinSrgb::new(0.0, 0.0, 0.0);
    for pixel in bytes.chunks_exact(4) {
        sum += Srgb::new(pixel[0], pixel[1], pixel[2]).into_format::<f64>().into_linear();
    }
    #[expect(clippy::cast_precision_loss, reason = "a photo has fewer pixels than an f64 counts")]
    let count = (bytes.len() / 4) as f64;
    let mean: Srgb<f64> = Srgb::from_linear(sum / count);
    Ok(Patch { channels: [mean.red, mean.green, mean.blue].map(|channel| channel * 255.0) })
}

fn linear(patch: Patch) -> LinSrgb<f64> {
    let [red, green, blue] = patch.channels.map(|channel| channel / 255.0);
    Srgb::new(red, green, blue).into_linear()
}

/// The colour of a sample beside a white in the same photo: each channel of linear light is divided by that of the white,
/// so that the light of the room and the camera's own balance fall out.
///
/// *Valid for* a matt white and a sample in the same light, neither overexposed. The white counts as perfectly white, so
/// lightness is relative to it. *Source*: IEC 61966-2-1 (sRGB), CIE 15 (CIELAB); channel-wise scaling after von Kries.
///
/// # Errors
/// `colour.white-overexposed`, `colour.white-too-dark`, `colour.lighter-than-white`.
pub fn read_against_white(sample: Patch, white: Patch) -> Result<Colour, ColourError> {
    // A little more light in the sample than in the paper may be a shadow; more than that is no white.
    const MOST: f64 = 1.05;
    if white.channels.iter().any(|channel| *channel >= 254.0) {
        return Err(ColourError::WhiteOverexposed);
    }
    if white.channels.iter().any(|channel| channel.is_nan() || *channel < 60.0) {
        return Err(ColourError::WhiteTooDark);
    }
    let (sample, white) = (linear(sample), linear(white));
    let share = LinSrgb::new(sample.red / white.red, sample.green / white.green, sample.blue / white.blue);
    if share.red > MOST || share.green > MOST || share.blue > MOST {
        return Err(ColourError::LighterThanWhite);
    }
    Ok(Lab::from_color(share).into())
}

impl From<Lab<D65, f64>> for Colour {
    fn from(lab: Lab<D65, f64>) -> Self {
        Self { lightness: lab.l, a: lab.a, b: lab.b }
    }
}

impl Colour {
    fn lab(self) -> Lab<D65, f64> {
        Lab::new(self.lightness, self.a, self.b)
    }

    /// How strong the colour is: its distance from grey.
    #[must_use]
    pub fn chroma(self) -> f64 {
        self.a.hypot(self.b)
    }

    /// The difference to another colour by CIEDE2000, with all weights 1.
    ///
    /// *Source*: CIE 142-2001; held to the 34 pairs of Sharma, Wu and Dalal (2005), evidence set `colour.ciede2000`.
    ///
    /// ```
    /// use stillroom_core::colour::Colour;
    /// let one = Colour { lightness: 50.0, a: 2.6772, b: -79.7751 };
    /// let other = Colour { lightness: 50.0, a: 0.0, b: -82.7485 };
    /// assert!((one.difference(other) - 2.0425).abs() < 0.0001);
    /// ```
    #[must_use]
    pub fn difference(self, other: Self) -> f64 {
        self.lab().difference(other.lab())
    }

    /// How a screen shows it: red, green and blue, 0 to 255. A colour no screen can show becomes its nearest.
    #[must_use]
    pub fn on_screen(self) -> [u8; 3] {
        let shown: Srgb<f64> = Srgb::from_color(self.lab());
        let shown: Srgb<u8> = shown.into_format();
        [shown.red, shown.green, shown.blue]
    }
}

/// Fits first-order fading to colours read on days: chroma falls in proportion to what is left of it.
///
/// *Units*: days. *Valid for* a colour that turns grey; one that turns into another (browning) fades by another law, and
/// its scatter around the curve shows that in a wide band. *Source*: first-order decay, least squares.
///
/// # Errors
/// Those of [`crate::decay::fit`].
pub fn fit_fade(colours: &[(f64, Colour)]) -> Result<Decay, DecayError> {
    let readings: Vec<ReadingAt> =
        colours.iter().map(|(day, colour)| ReadingAt { time: *day, value: colour.chroma() }).collect();
    fit(&readings, 0.0, CHROMA_ACCURACY)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn patch(red: f64, green: f64, blue: f64) -> Patch {
        Patch { channels: [red, green, blue] }
    }

    #[test]
    fn a_photo_that_cannot_be_read_says_why() {
        let code = |sample, white| read_against_white(sample, white).unwrap_err().code();
        assert_eq!(code(patch(90.0, 90.0, 90.0), patch(255.0, 250.0, 240.0)), "colour.white-overexposed");
        assert_eq!(code(patch(20.0, 20.0, 20.0), patch(50.0, 60.0, 70.0)), "colour.white-too-dark");
        assert_eq!(code(patch(240.0, 240.0, 240.0), patch(200.0, 200.0, 200.0)), "colour.lighter-than-white");
        assert_eq!(mean_of_pixels(&[]).unwrap_err().code(), "colour.no-pixels");
        assert_eq!(mean_of_pixels(&[1, 2, 3]).unwrap_err().code(), "colour.no-pixels");
    }

    #[test]
    fn the_mean_is_taken_in_linear_light() {
        let mean = mean_of_pixels(&[0, 0, 0, 255, 255, 255, 255, 255]).unwrap();
        // Half the light is sRGB 188, not 128 (IEC 61966-2-1).
        assert!((mean.channels[0] - 187.5).abs() < 0.5, "{mean:?}");
    }

    proptest! {
        #[test]
        fn the_light_of_the_room_falls_out(
            sample in prop::array::uniform3(0.02..0.9f64), light in prop::array::uniform3(0.3..0.95f64),
        ) {
            let seen = |reflected: [f64; 3]| {
                let lit = LinSrgb::new(reflected[0] * light[0], reflected[1] * light[1], reflected[2] * light[2]);
                let lit: Srgb<f64> = Srgb::from_linear(lit);
                patch(lit.red * 255.0, lit.green * 255.0, lit.blue * 255.0)
            };
            let in_this_light = read_against_white(seen(sample), seen([1.0; 3])).unwrap();
            let own: Colour = Lab::from_color(LinSrgb::new(sample[0], sample[1], sample[2])).into();
            prop_assert!(in_this_light.difference(own) < 1e-6);
        }
    }
}
