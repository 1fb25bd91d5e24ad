//! Water activity: what share of its pull water has left, 1 for pure water.
//!
//! A number that is too low is the one that hurts: it calls a liquid better kept than it is. So glycerol is given as a
//! [`Band`] over the published forms, and judgements use its upper end. One constant in the equation of Norrish reads
//! too dry above 50 % glycerol and is not used for it.

use super::interpolation::{Table, interpolate_linear};
use super::{Band, MassFraction, PhysicsError, Range, Temperature, ethanol, glycerol, propanediol, water};

/// Where the published forms for glycerol reach.
pub const GLYCEROL_FRACTION: Range = Range::fraction("glycerol.water-activity", "glycerol", 0.0, 0.95);
/// What the constants of Norrish were fitted over.
pub const NORRISH: Range =
    Range { equation: "norrish.water-activity", quantity: "water activity", unit: "1", minimum: 0.80, maximum: 1.0 };
/// Where [`sodium_chloride`] holds: to saturation at 25 °C.
pub const SODIUM_CHLORIDE: Range = Range {
    equation: "sodium-chloride.water-activity",
    quantity: "molality",
    unit: "mol/kg",
    minimum: 0.0,
    maximum: 6.144,
};

/// Mole fraction of a solute from masses in the same unit.
fn mole_fraction(solute: f64, molar_mass: f64, water: f64) -> f64 {
    let (solute, water) = (solute / molar_mass, water / water::MOLAR_MASS);
    solute / (solute + water)
}

fn glycerol_mole_fraction(w: f64) -> f64 {
    mole_fraction(w, glycerol::MOLAR_MASS, 1.0 - w)
}

/// Glycerol in water at 25 °C, one curve through the published forms: `x_w · exp(-1.14727 x² + 1.35471 x³)`.
///
/// *Valid for* 0 to 95 %, within 0.01 of the published values to 60 % and within their spread above it.
///
/// *Source:* fitted to Scott WJ, Adv. Food Res. 7:83 (1957) below 35 % and above 50 % to [`glycerol_wilson`],
/// [`glycerol_from_index`] and [`glycerol_from_gravity`].
///
/// # Errors
/// `physics.out-of-range` above 95 %.
pub fn glycerol_pooled(glycerol: MassFraction) -> Result<f64, PhysicsError> {
    Ok(evaluate_pooled(GLYCEROL_FRACTION.check(glycerol.value())?))
}

fn evaluate_pooled(w: f64) -> f64 {
    let x = glycerol_mole_fraction(w);
    (1.0 - x) * (-1.147_27 * x * x + 1.354_71 * x.powi(3)).exp()
}

/// Glycerol in water by the Wilson equation of Zhang L, Grace PM, Sun DW, Drying Technol. 40:2404 (2022).
///
/// Reads 0.002 to 0.005 low below 30 %. The constants were read in an open implementation, not in the paper.
///
/// # Errors
/// `physics.out-of-range` above 95 %.
pub fn glycerol_wilson(glycerol: MassFraction, temperature: Temperature) -> Result<f64, PhysicsError> {
    const WATER_VOLUME: f64 = 0.018_831_1;
    const GLYCEROL_VOLUME: f64 = 0.086_85;
    let x = glycerol_mole_fraction(GLYCEROL_FRACTION.check(glycerol.value())?);
    let r = x / (1.0 - x);
    let l12 = (0.899_240_67 + 127.075_11 / temperature.kelvin()).exp();
    let l21 = (-1.917_301_3 + 91.465_969 / temperature.kelvin()).exp();
    let volumes = GLYCEROL_VOLUME / WATER_VOLUME;
    let ln = -(1.0 + volumes * r / l12).ln() + r / (l12 / volumes + r) - r * volumes / l12 / (r + 1.0 / volumes / l21);
    Ok(ln.exp())
}

/// Glycerol in water at 25 °C from its refractive index: ASTM D5032 (constants from memory).
///
/// # Errors
/// `physics.out-of-range` above 95 %.
pub fn glycerol_from_index(glycerol: MassFraction) -> Result<f64, PhysicsError> {
    GLYCEROL_FRACTION.check(glycerol.value())?;
    let t = Temperature::TWENTY_FIVE.celsius();
    let a = 25.60 - 0.1950 * t + 0.0008 * t * t;
    let r = 715.3 * (glycerol::refractive_index(glycerol, Temperature::TWENTY_FIVE)? - 1.3333);
    let humidity = ((100.0 + a).powi(2) + a * a - (r + a).powi(2)).max(0.0).sqrt() - a;
    Ok((humidity / 100.0).clamp(0.0, 1.0))
}

/// Glycerol in water at 20 to 25 °C from its specific gravity: Forney CF, Brandl DG, HortTechnology 2:52 (1992)
/// (constants from memory).
///
/// # Errors
/// `physics.out-of-range` above 95 %.
pub fn glycerol_from_gravity(glycerol: MassFraction) -> Result<f64, PhysicsError> {
    GLYCEROL_FRACTION.check(glycerol.value())?;
    let water = glycerol::density(MassFraction::NONE, Temperature::TWENTY_FIVE)?;
    let gravity = glycerol::density(glycerol, Temperature::TWENTY_FIVE)? / water;
    let humidity = (19.9 - gravity.powf(1.0 / 0.0806)) / 0.189;
    Ok((humidity / 100.0).clamp(0.0, 1.0))
}

/// Glycerol in water at 25 °C: the pooled curve, and as band the spread of the published forms at this strength (up to
/// 50 % also Norrish with K = 1.16).
///
/// *Valid for* every strength. Above 95 %, where no form reaches, only what is certain is said: no more than at 95 %.
///
/// ```
/// use stillroom_core::chemistry::{MassFraction, water_activity::glycerol_band};
/// let band = glycerol_band(MassFraction::new(0.65).unwrap());
/// assert!(band.low < 0.694 && band.high > 0.694 && band.high - band.low < 0.02);
/// ```
#[must_use]
pub fn glycerol_band(glycerol: MassFraction) -> Band {
    let w = glycerol.value();
    if w <= 0.0 {
        return Band::exact(1.0);
    }
    let at = MassFraction(w.min(GLYCEROL_FRACTION.maximum));
    let forms = [
        glycerol_wilson(at, Temperature::TWENTY_FIVE),
        glycerol_from_index(at),
        glycerol_from_gravity(at),
        if w <= 0.50 { norrish_one(&NORRISH_GLYCEROL, w, 1.0 - w) } else { glycerol_pooled(at) },
    ];
    let estimate = glycerol_pooled(at).unwrap_or(1.0);
    // A form that fails would leave the band too narrow; none does inside the range.
    let values = forms.map(|form| form.unwrap_or(1.0));
    let band = Band::around(estimate, &values);
    if w > GLYCEROL_FRACTION.maximum {
        // The curve ends at nothing for pure glycerol, so this far it only bridges two known points.
        return Band { low: 0.0, estimate: evaluate_pooled(w), high: band.high };
    }
    band
}

/// A solute and its constant in the equation of Norrish.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NorrishSolute {
    /// Common name.
    pub name: &'static str,
    /// Molar mass in g/mol.
    pub molar_mass: f64,
    /// Constant, natural logarithm (older tables print it for the common logarithm).
    pub constant: f64,
    /// Where the constant was published, and whether it was read there or recalled.
    pub source: &'static str,
}

const DENTISTRY: &str = "Chirife et al., as tabulated in Int. J. Dentistry 2010:981072, Table 3";
const CHIRIFE: &str = "Chirife J, Ferro Fontan C, Benmergui EA, J. Food Technol. 15:59 (1980) (memory)";

const NORRISH_GLYCEROL: NorrishSolute =
    NorrishSolute { name: "glycerol", molar_mass: glycerol::MOLAR_MASS, constant: 1.16, source: DENTISTRY };

/// Hexoses, the sugars of most plant juices.
pub const HEXOSE: NorrishSolute =
    NorrishSolute { name: "glucose or fructose", molar_mass: 180.156, constant: 2.25, source: CHIRIFE };

/// Solutes with a constant at 25 °C. Glycerol is not among them: see [`glycerol_band`].
pub const NORRISH_SOLUTES: [NorrishSolute; 22] = {
    const fn solute(name: &'static str, molar_mass: f64, constant: f64, source: &'static str) -> NorrishSolute {
        NorrishSolute { name, molar_mass, constant, source }
    }
    [
        solute("erythritol", 122.12, 1.34, DENTISTRY),
        solute("xylitol", 152.15, 1.66, DENTISTRY),
        solute("D-arabitol", 152.15, 1.41, DENTISTRY),
        solute("L-arabitol", 152.15, 1.21, DENTISTRY),
        solute("ribitol", 152.15, 1.49, DENTISTRY),
        solute("sorbitol", 182.17, 1.65, DENTISTRY),
        solute("D-mannitol", 182.17, 0.906, DENTISTRY),
        solute("sucrose", 342.297, 6.47, CHIRIFE),
        solute("maltose", 342.297, 4.54, CHIRIFE),
        solute("lactose", 342.297, 10.2, CHIRIFE),
        solute("D-glucose", 180.156, 2.25, CHIRIFE),
        solute("D-fructose", 180.156, 2.25, CHIRIFE),
        solute("D-xylose", 150.13, 1.54, CHIRIFE),
        solute("urea", 60.055, -2.02, CHIRIFE),
        solute("glycine", 75.07, -0.87, CHIRIFE),
        solute("DL-alanine", 89.09, -2.52, CHIRIFE),
        solute("lactic acid", 90.078, -1.59, CHIRIFE),
        solute("citric acid", 192.124, 6.17, CHIRIFE),
        solute("malic acid", 134.09, 1.82, CHIRIFE),
        solute("tartaric acid", 150.09, 4.68, CHIRIFE),
        solute("PEG 400", 400.0, 26.6, CHIRIFE),
        solute("PEG 600", 600.0, 56.0, CHIRIFE),
    ]
};

/// One solute in water at 25 °C by Norrish: `x_w · exp(-K x²)`; masses in the same unit.
///
/// *Valid for* water activities from 0.80.
///
/// *Source:* Norrish RS, J. Food Technol. 1:25 (1966); constants in [`NORRISH_SOLUTES`].
///
/// # Errors
/// `physics.out-of-range` below 0.80, or for negative masses.
pub fn norrish_one(solute: &NorrishSolute, mass: f64, water: f64) -> Result<f64, PhysicsError> {
    norrish(&[(*solute, mass)], water)
}

/// Several solutes in water at 25 °C; masses in the same unit.
///
/// Solutes whose constant is not negative go together: `ln a = ln x_w - (Σ √K x)²`. No published form was found for a
/// negative constant among others, so each of those stands alone in all the water and the parts are multiplied (Ross).
///
/// *Valid for* water activities from 0.80.
///
/// *Source:* Chirife J et al., J. Food Technol. 15:59 (1980) (form from memory); Ross KD, Food Technol. 29:26 (1975).
///
/// # Errors
/// `physics.out-of-range` below 0.80, or for negative masses.
///
/// ```
/// use stillroom_core::chemistry::water_activity::{NORRISH_SOLUTES, norrish};
/// let sucrose = *NORRISH_SOLUTES.iter().find(|solute| solute.name == "sucrose").unwrap();
/// assert!((norrish(&[(sucrose, 60.0)], 40.0)? - 0.90).abs() < 0.005);
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn norrish(solutes: &[(NorrishSolute, f64)], water: f64) -> Result<f64, PhysicsError> {
    let moles_of_water = water / water::MOLAR_MASS;
    let together = || solutes.iter().filter(|(solute, _)| solute.constant >= 0.0);
    let moles: f64 = together().map(|(solute, mass)| mass / solute.molar_mass).sum::<f64>() + moles_of_water;
    let interaction: f64 =
        together().map(|(solute, mass)| solute.constant.sqrt() * mass / solute.molar_mass / moles).sum();
    let mut activity = moles_of_water / moles * (-interaction * interaction).exp();
    for (solute, mass) in solutes.iter().filter(|(solute, _)| solute.constant < 0.0) {
        let x = mole_fraction(*mass, solute.molar_mass, water);
        activity *= (1.0 - x) * (-solute.constant * x * x).exp();
    }
    NORRISH.check(activity)
}

/// Sodium chloride in water at 25 °C, molality in mol/kg.
///
/// *Valid for* 0 to 6.144 mol/kg (saturated).
///
/// *Source:* Tang IN, Munkelwitz HR, Wang N, J. Colloid Interface Sci. 114:409 (1986).
///
/// # Errors
/// `physics.out-of-range` outside that.
pub fn sodium_chloride(molality: f64) -> Result<f64, PhysicsError> {
    let m = SODIUM_CHLORIDE.check(molality)?;
    if m == 0.0 {
        return Ok(1.0);
    }
    let b = 1.0 + 1.37 * m.sqrt();
    let electric = 0.5108 / (1.37_f64.powi(3) * m) * (b - 4.605_17 * b.log10() - 1.0 / b);
    let short = 2.796e-2 * m / 2.0 + 2.0 / 3.0 * 4.803e-3 * m * m + 0.75 * -2.736e-4 * m.powi(3);
    let osmotic = 1.0 - core::f64::consts::LN_10 * (electric - short);
    Ok((-2.0 * 0.018_015_3 * m * osmotic).exp())
}

/// A propanediol in water at 25 °C.
///
/// No trustworthy measurements were found. The estimate is ideal (Raoult); the band reaches from the equation of Norrish
/// with the constant of freezing points (2.89) to a group-contribution model that is known to read too wet (UNIFAC).
///
/// # Errors
/// `physics.out-of-range` for negative masses or none at all.
pub fn propanediol_band(diol: f64, water: f64) -> Result<Band, PhysicsError> {
    let w = MassFraction::of(diol, water)?.value();
    let x = mole_fraction(diol, propanediol::MOLAR_MASS, water);
    let wet = interpolate_linear(PROPANEDIOL_UNIFAC, w).unwrap_or(1.0);
    Ok(Band { low: (1.0 - x) * (-2.89 * x * x).exp(), estimate: 1.0 - x, high: wet.max(1.0 - x) })
}

/// 1,2-propanediol in water at 25 °C by original UNIFAC, computed with the open library thermo 0.6.1.
const PROPANEDIOL_UNIFAC: Table = &[
    (0.0, 1.000_00),
    (0.05, 0.988_76),
    (0.1, 0.978_56),
    (0.15, 0.969_13),
    (0.2, 0.960_16),
    (0.25, 0.951_29),
    (0.3, 0.942_11),
    (0.35, 0.932_11),
    (0.4, 0.920_67),
    (0.45, 0.907_02),
    (0.5, 0.890_21),
    (0.55, 0.869_03),
    (0.6, 0.841_97),
    (0.65, 0.807_11),
    (0.7, 0.762_05),
    (0.75, 0.703_73),
    (0.8, 0.628_31),
    (0.85, 0.530_89),
    (0.9, 0.404_75),
    (0.95, 0.238_53),
    (1.0, 0.0),
];

/// Ethanol in water near 25 °C.
///
/// The estimate and the upper end are van Laar's equation, by which water is held less than ideally; the lower end is
/// ideal. Ethanol keeps a liquid by other means than binding water: see the share by volume.
///
/// *Source:* van Laar constants 1.6798 and 0.9227 of textbooks of chemical engineering (memory).
///
/// # Errors
/// `physics.out-of-range` for negative masses or none at all.
pub fn ethanol_band(ethanol: f64, water: f64) -> Result<Band, PhysicsError> {
    MassFraction::of(ethanol, water)?;
    let x = mole_fraction(ethanol, ethanol::MOLAR_MASS, water);
    let share = 1.6798 * x / (1.6798 * x + 0.9227 * (1.0 - x));
    let held_less = ((1.0 - x) * (0.9227 * share * share).exp()).min(1.0);
    Ok(Band { low: 1.0 - x, estimate: held_less, high: held_less })
}

/// Several bands in the same water: each as if alone in all of it, multiplied (Ross). With more than one, the band is
/// widened by 0.01 on both sides, which is how well the rule is usually said to hold above 0.8.
///
/// *Source:* Ross KD, Food Technol. 29:26 (1975) (accuracy from memory).
#[must_use]
pub fn combine(bands: &[Band]) -> Band {
    let product = bands.iter().fold(Band::exact(1.0), |product, band| Band {
        low: product.low * band.low,
        estimate: product.estimate * band.estimate,
        high: product.high * band.high,
    });
    if bands.len() < 2 {
        return product;
    }
    Band { low: (product.low - 0.01).max(0.0), high: (product.high + 0.01).min(1.0), ..product }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_band_holds_its_estimate_and_falls_with_strength(w in 0.0..0.99_f64) {
            let [weaker, stronger] = [w, w + 0.01].map(|w| glycerol_band(MassFraction::new(w).unwrap()));
            for band in [weaker, stronger] {
                prop_assert!(0.0 <= band.low && band.low <= band.estimate, "{band:?}");
                prop_assert!(band.estimate <= band.high && band.high <= 1.0, "{band:?}");
            }
            prop_assert!(stronger.high <= weaker.high + 1e-9);
            prop_assert!(stronger.estimate <= weaker.estimate + 1e-9);
        }

        #[test]
        fn the_upper_end_is_never_below_any_published_form(w in 0.0..=0.95_f64) {
            let glycerol = MassFraction::new(w).unwrap();
            let high = glycerol_band(glycerol).high;
            prop_assert!(high >= glycerol_pooled(glycerol).unwrap());
            prop_assert!(high >= glycerol_wilson(glycerol, Temperature::TWENTY_FIVE).unwrap());
            prop_assert!(high >= glycerol_from_index(glycerol).unwrap());
            prop_assert!(high >= glycerol_from_gravity(glycerol).unwrap());
        }

        #[test]
        fn no_masses_panic(a in -1e9..1e9_f64, b in -1e9..1e9_f64, water in -1e9..1e9_f64) {
            let _ = (norrish(&[(NORRISH_SOLUTES[0], a), (NORRISH_SOLUTES[13], b)], water), sodium_chloride(a));
            let _ = (propanediol_band(a, water), ethanol_band(a, water));
        }
    }

    #[test]
    fn one_solute_among_several_reads_as_alone() {
        let sucrose = NORRISH_SOLUTES[7];
        let alone = norrish_one(&sucrose, 50.0, 50.0).unwrap();
        let among = norrish(&[(sucrose, 50.0), (HEXOSE, 0.0)], 50.0).unwrap();
        assert!((alone - among).abs() < 1e-12);
        assert!(norrish_one(&sucrose, 90.0, 10.0).is_err(), "far outside what the constant was fitted over");
    }

    #[test]
    fn a_single_constant_would_call_a_strong_glycerite_too_dry() {
        let strong = MassFraction::new(0.80).unwrap();
        let x = glycerol_mole_fraction(0.80);
        let norrish = (1.0 - x) * (-1.16 * x * x).exp();
        assert!(glycerol_band(strong).high - norrish > 0.05);
    }
}
