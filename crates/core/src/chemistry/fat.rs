//! What the fatty acids of a fat say about it: how much lye it takes up, how many double bonds it has, how it keeps.

use super::{PhysicsError, Range};
pub use stillroom_terms::FattyAcid;

/// Mass of a mole of potassium hydroxide, g/mol. *Source*: IUPAC abridged standard atomic weights 2021.
const POTASSIUM_HYDROXIDE: f64 = 56.105;
/// Mass of a mole of iodine, g/mol. *Source*: as above.
const IODINE: f64 = 253.81;
/// What three fatty acids gain when they become a fat: glycerol less three waters, g/mol.
const GLYCERYL: f64 = 92.094 - 3.0 * 18.015;

/// How fast a fatty acid takes up oxygen, with oleic acid as 1.
///
/// Oleic 1, linoleic 10.3, linolenic 21.6: *source* Fatemi and Hammond, Lipids 15 (1980) 379-385 (recalled). For more
/// double bonds the step from two to three is carried on: an estimate.
fn oxidizability(acid: FattyAcid) -> f64 {
    match acid.double_bonds() {
        0 => 0.0,
        1 => 1.0,
        2 => 10.3,
        more => 21.6 + 11.3 * f64::from(more - 3),
    }
}

/// How a fat keeps, judged by its fatty acids alone. Antioxidants in it, light, air and metals change it greatly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OxidationClass {
    /// Hardly any double bonds: coconut, cocoa butter.
    Slow,
    /// Mostly oleic acid: olive, almond.
    Moderate,
    /// Much linoleic acid: sunflower, grape seed.
    Fast,
    /// Much linolenic acid: linseed, rosehip.
    VeryFast,
}

impl OxidationClass {
    /// The stable word for it.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Slow => "slow",
            Self::Moderate => "moderate",
            Self::Fast => "fast",
            Self::VeryFast => "very-fast",
        }
    }
}

/// The fatty acids of a fat, as shares of their sum.
#[derive(Debug, Clone, PartialEq)]
pub struct FatProfile {
    /// Acid and its share by mass, together 1.
    shares: Vec<(FattyAcid, f64)>,
}

impl FatProfile {
    /// A profile of masses in any one unit.
    ///
    /// # Errors
    /// `physics.no-data` where nothing is there; `physics.out-of-range` for a mass below 0.
    pub fn new(masses: &[(FattyAcid, f64)]) -> Result<Self, PhysicsError> {
        let mass = Range { equation: "fatty acids", quantity: "mass", unit: "g", minimum: 0.0, maximum: 1e6 };
        let mut sum = 0.0;
        for (_, each) in masses {
            sum += mass.check(*each)?;
        }
        if sum <= 0.0 {
            return Err(PhysicsError::NoData { quantity: "fatty acids", with: "nothing" });
        }
        Ok(Self { shares: masses.iter().map(|(acid, each)| (*acid, each / sum)).collect() })
    }

    /// Share by mass of the acids that a test picks.
    #[must_use]
    pub fn share(&self, picked: impl Fn(FattyAcid) -> bool) -> f64 {
        self.shares.iter().filter(|(acid, _)| picked(*acid)).map(|(_, share)| share).sum()
    }

    /// How much of two fats is alike, by their acids: 1 for the same, 0 where they share none.
    #[must_use]
    pub fn alike(&self, other: &Self) -> f64 {
        self.shares.iter().map(|(acid, share)| share.min(other.share(|each| each == *acid))).sum()
    }

    /// Mean mass of a mole of its fatty acids, g/mol.
    fn mean_acid(&self) -> f64 {
        1.0 / self.shares.iter().map(|(acid, share)| share / acid.molar_mass()).sum::<f64>()
    }

    /// Mass of a mole of the fat, three acids to a glycerol, g/mol.
    fn molar_mass(&self) -> f64 {
        3.0 * self.mean_acid() + GLYCERYL
    }

    /// Potassium hydroxide that saponifies a gram, in mg: 3 × 56.105 × 1000 ÷ M.
    ///
    /// *Valid for* fats of triglycerides; wax esters and what does not saponify (some per cent in most oils, up to a tenth
    /// in shea butter) take up less. *Source*: the definition, as in AOCS Cd 3a-94; evidence set `oils.profile`.
    ///
    /// ```
    /// use stillroom_core::chemistry::fat::{FatProfile, FattyAcid};
    /// // Triolein: 885.4 g/mol, so 190.1 mg.
    /// let triolein = FatProfile::new(&[(FattyAcid::parse("18:1").unwrap(), 100.0)])?;
    /// assert!((triolein.saponification_value() - 190.1).abs() < 0.1);
    /// assert!(FatProfile::new(&[]).is_err());
    /// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
    /// ```
    #[must_use]
    pub fn saponification_value(&self) -> f64 {
        3.0 * POTASSIUM_HYDROXIDE * 1000.0 / self.molar_mass()
    }

    /// Iodine that 100 g take up, in grams: moles of double bonds × 253.81.
    ///
    /// *Valid for* as [`Self::saponification_value`]; conjugated double bonds take up less than they count here.
    /// *Source*: the definition, as in AOCS Cd 1c-85; evidence set `oils.profile`.
    #[must_use]
    pub fn iodine_value(&self) -> f64 {
        let bonds: f64 = self
            .shares
            .iter()
            .map(|(acid, share)| share / acid.molar_mass() * f64::from(acid.double_bonds()))
            .sum::<f64>()
            * self.mean_acid();
        3.0 * bonds * IODINE * 100.0 / self.molar_mass()
    }

    /// How readily it takes up oxygen: the shares of its acids weighted with their rates, oleic acid being 1.
    ///
    /// *Source*: Fatemi and Hammond, Lipids 15 (1980) 379-385 (recalled).
    #[must_use]
    pub fn oxidizability(&self) -> f64 {
        self.shares.iter().map(|(acid, share)| share * oxidizability(*acid)).sum()
    }

    /// The class of [`Self::oxidizability`]: below 1, below 3.5, below 8.5, and above.
    ///
    /// *Source*: common practice: the bounds part what is usually kept two years, one year, half a year and less.
    #[must_use]
    pub fn oxidation_class(&self) -> OxidationClass {
        match self.oxidizability() {
            rate if rate < 1.0 => OxidationClass::Slow,
            rate if rate < 3.5 => OxidationClass::Moderate,
            rate if rate < 8.5 => OxidationClass::Fast,
            _ => OxidationClass::VeryFast,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn profile(acids: &[(&str, f64)]) -> FatProfile {
        let acids: Vec<_> = acids.iter().map(|(acid, mass)| (FattyAcid::parse(acid).unwrap(), *mass)).collect();
        FatProfile::new(&acids).unwrap()
    }

    /// Masses of a mole as handbooks print them (CRC Handbook, from memory).
    #[test]
    fn acids_weigh_what_handbooks_say() {
        for (acid, mass) in [
            ("12:0", 200.32),
            ("16:0", 256.42),
            ("18:0", 284.48),
            ("18:2", 280.45),
            ("18:3", 278.43),
            ("18:1 OH", 298.46),
        ] {
            assert!((FattyAcid::parse(acid).unwrap().molar_mass() - mass).abs() < 0.02, "{acid}");
        }
        for wrong in ["", "18", "18:", ":1", "18:9", "1:0", "31:0", "18:1OH", "a:b"] {
            assert_eq!(FattyAcid::parse(wrong), None, "{wrong}");
        }
    }

    /// Pure fats (Gunstone, The Lipid Handbook, from memory): tristearin 188.8 and 0, triolein 190.1 and 86.0, trilinolein
    /// 191.5 and 173.2, trilinolenin 192.8 and 261.6.
    #[test]
    fn pure_fats_take_up_what_the_handbook_says() {
        for (acid, saponification, iodine) in
            [("18:0", 188.8, 0.0), ("18:1", 190.1, 86.0), ("18:2", 191.5, 173.2), ("18:3", 192.8, 261.6)]
        {
            let fat = profile(&[(acid, 1.0)]);
            assert!((fat.saponification_value() - saponification).abs() < 0.2, "{acid}");
            assert!((fat.iodine_value() - iodine).abs() < 0.3, "{acid}: {}", fat.iodine_value());
        }
    }

    #[test]
    fn oils_fall_into_the_class_a_maker_knows() {
        for (acids, class) in [
            (&[("12:0", 48.0), ("14:0", 18.0), ("16:0", 9.0), ("18:1", 6.0), ("18:2", 2.0)][..], OxidationClass::Slow),
            (&[("16:0", 12.0), ("18:1", 71.0), ("18:2", 10.0), ("18:3", 0.8)], OxidationClass::Moderate),
            (&[("16:0", 7.0), ("18:1", 16.0), ("18:2", 70.0)], OxidationClass::Fast),
            (&[("18:1", 18.0), ("18:2", 15.0), ("18:3", 55.0)], OxidationClass::VeryFast),
        ] {
            assert_eq!(profile(acids).oxidation_class(), class);
        }
    }

    proptest! {
        #[test]
        fn a_mixture_lies_between_its_acids(masses in prop::collection::vec(0.1..90.0f64, 3)) {
            let acids = ["12:0", "18:1", "18:3"];
            let named: Vec<_> = acids.into_iter().zip(masses).collect();
            let fat = profile(&named);
            let of = |acid| profile(&[(acid, 1.0)]);
            prop_assert!(fat.saponification_value() < of("12:0").saponification_value());
            prop_assert!(fat.saponification_value() > of("18:1").saponification_value());
            prop_assert!(fat.iodine_value() > 0.0 && fat.iodine_value() < of("18:3").iodine_value());
        }
    }
}
