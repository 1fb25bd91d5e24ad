//! A handful of substances with a few published facts, so that each check can be tested beside it.

#![allow(clippy::unnecessary_wraps, clippy::unused_self, reason = "reads better where it is used")]

use super::contents::{Conditions, Contents};
use super::cure::Cure;
use super::facts::{
    Acid, Allergen, Authority, Brings, Charge, Cosolvent, Facts, Inhibition, InsideOil, Knowledge, Limit, OilKind,
    OilPartition, OilSolubility, Preservative, Remedies, SaltOf, Span, Strength, Trait, WaterSolubility,
};
use super::finding::{Finding, subject_of};
use crate::amount::Amount;
use crate::chemistry::ph::{AcidBase, Cation, Solution};
use crate::chemistry::solubility::{Curve, Point};
use crate::composition::Makeups;
use crate::evaluation::{self, evaluate};
use crate::formula::{Formula, LineId};
use crate::material::{Constituent, ConstituentId, Makeup, Material, MaterialId, MaterialSource};
use crate::product::ProductKind;
use crate::quantity::{Celsius, Percent, Ph};
use crate::source::{Citation, Cited};
use rust_decimal::Decimal;
use std::sync::OnceLock;
use stillroom_terms::{Class, PhaseKind};

const TABLE: Citation = Citation::published("a table");

fn cited<T>(value: T) -> Cited<T> {
    Cited { value, citation: TABLE }
}

fn curve(points: &[(f64, f64)]) -> Option<WaterSolubility> {
    let points =
        points.iter().map(|&(temperature, grams)| Point { temperature, grams, factor: 1.0, citation: TABLE }).collect();
    Curve::through(points).map(WaterSolubility::Limited)
}

/// Acids that substances of the bench bring, made once.
fn acid_base(name: &str) -> &'static AcidBase {
    static ACIDS: OnceLock<[AcidBase; 5]> = OnceLock::new();
    let make = |charge, pkas: &[f64]| AcidBase::at_25(charge, pkas).unwrap();
    let acids = ACIDS.get_or_init(|| {
        [
            make(0, &[3.128, 4.761, 6.396]),
            make(0, &[4.204]),
            make(0, &[3.86]),
            make(0, &[6.352, 10.329]),
            make(1, &[7.762]),
        ]
    });
    let names = ["citric", "benzoic", "lactic", "carbonic", "triethanolamine"];
    &acids[names.iter().position(|known| *known == name).unwrap()]
}

fn brings(name: &str, molar_mass: f64, sodium: f64) -> Option<Brings> {
    let moles = 1000.0 / molar_mass;
    let mut per_kilogram = Solution::in_water(0.0).with_cation(Cation::Sodium, sodium * moles);
    if !name.is_empty() {
        per_kilogram.add(acid_base(name), moles);
    }
    Some(Brings { per_kilogram, spread: 0.03, citation: Some(TABLE) })
}

fn acid(pka: f64) -> Option<Acid> {
    Some(Acid { steps: vec![pka], citation: TABLE })
}

pub(crate) struct Bench {
    materials: Vec<Material>,
    constituents: Vec<Constituent>,
    facts: Vec<Facts>,
    limits: Vec<Limit>,
    allergens: Vec<Allergen>,
    preservatives: Vec<ConstituentId>,
    remedies: Remedies,
}

impl Bench {
    #[allow(clippy::too_many_lines, reason = "a table of substances")]
    pub(crate) fn new() -> Self {
        let mut bench = Self {
            materials: Vec::new(),
            constituents: Vec::new(),
            facts: Vec::new(),
            limits: Vec::new(),
            allergens: Vec::new(),
            preservatives: Vec::new(),
            remedies: Remedies::default(),
        };
        let none = Facts::default;
        let with = |traits: &[Trait]| Facts { traits: traits.iter().map(|each| cited(*each)).collect(), ..none() };
        let nothing = Brings { per_kilogram: Solution::in_water(0.0), spread: 0.0, citation: None };
        bench.substance("Aqua", Class::Water, Facts { brings: Some(nothing), ..none() });
        bench.substance("Glycerin", Class::Humectant, none());
        bench.substance("Propylene Glycol", Class::Solvent, none());
        bench.substance("Alcohol", Class::Solvent, none());
        bench.substance("Mystery Active", Class::Active, none());
        let facts = Facts { water_solubility: curve(&[(25.0, 0.5)]), log_kow: Some(cited(-2.2)), ..none() };
        bench.substance("Allantoin", Class::Active, facts);
        let facts = Facts {
            water_solubility: curve(&[(0.0, 0.17), (4.0, 0.18), (18.0, 0.27), (25.0, 0.344), (50.0, 0.95)]),
            log_kow: Some(cited(1.87)),
            acid: acid(4.2),
            molar_mass: Some(cited(122.12)),
            preservative: preservative(
                (0.2, 0.5),
                (2.5, 5.0),
                [Strength::Fair, Strength::Weak, Strength::Good, Strength::Good],
            ),
            traits: vec![cited(Trait::Benzoate)],
            ..none()
        };
        let facts = with_inhibition(facts, [0.011, 0.013, 0.0162, 0.0333], [4.0, 4.0, 2.0, 2.0]);
        let benzoic = bench.substance("Benzoic Acid", Class::Preservative, facts.clone());
        let facts = Facts {
            water_solubility: curve(&[(0.0, 62.7), (20.0, 62.8), (100.0, 71.0)]),
            acid: None,
            log_kow: None,
            molar_mass: Some(cited(144.1)),
            brings: brings("benzoic", 144.1, 1.0),
            salt_of: Some(SaltOf { acid: benzoic, equivalents: 1.0, citation: TABLE }),
            ..facts
        };
        let benzoate = bench.substance("Sodium Benzoate", Class::Preservative, facts);
        let facts = Facts {
            water_solubility: curve(&[(0.0, 0.124), (10.0, 0.153), (25.0, 0.209), (40.0, 0.414)]),
            log_kow: Some(cited(2.26)),
            acid: acid(2.97),
            molar_mass: Some(cited(138.12)),
            oil_solubility: vec![OilSolubility {
                temperature: 23.0,
                grams_per_100_g: 2.43,
                oil: "olive oil",
                citation: TABLE,
            }],
            traits: vec![cited(Trait::NotForSmallChildren)],
            ..none()
        };
        bench.substance("Salicylic Acid", Class::Active, facts);
        let facts = Facts {
            water_solubility: curve(&[(20.0, 0.15), (30.0, 0.19), (50.0, 0.55)]),
            log_kow: Some(cited(1.33)),
            acid: acid(4.76),
            molar_mass: Some(cited(112.13)),
            ..none()
        };
        let sorbic = bench.substance("Sorbic Acid", Class::Preservative, facts);
        let facts = Facts {
            water_solubility: curve(&[(20.0, 58.2), (50.0, 61.0)]),
            molar_mass: Some(cited(150.22)),
            salt_of: Some(SaltOf { acid: sorbic, equivalents: 1.0, citation: TABLE }),
            preservative: preservative(
                (0.15, 0.6),
                (3.0, 5.5),
                [Strength::Weak, Strength::Weak, Strength::Good, Strength::Good],
            ),
            ..none()
        };
        let facts = with_inhibition(facts, [0.0067, 0.018, 0.022, 0.0278], [4.0, 4.0, 2.0, 2.0]);
        let sorbate = bench.substance("Potassium Sorbate", Class::Preservative, facts);
        let facts = Facts {
            water_solubility: curve(&[(20.0, 2.67), (25.0, 2.5)]),
            log_kow: Some(cited(1.16)),
            preservative: preservative(
                (0.5, 1.0),
                (3.0, 10.0),
                [Strength::Fair, Strength::Good, Strength::Weak, Strength::Weak],
            ),
            oil_partition: vec![partition(OilKind::Triglyceride, 2.6), partition(OilKind::Hydrocarbon, 0.3)],
            max_add_temperature: Some(cited(60.0)),
            ..none()
        };
        let facts = with_inhibition(facts, [0.85, 0.36, 0.54, 0.33], [2.0; 4]);
        let phenoxyethanol = bench.substance("Phenoxyethanol", Class::Preservative, facts);
        let facts = Facts {
            water_solubility: curve(&[(10.0, 0.2), (25.0, 0.203), (80.0, 2.0)]),
            log_kow: Some(cited(1.96)),
            acid: acid(8.17),
            molar_mass: Some(cited(152.15)),
            preservative: preservative(
                (0.1, 0.4),
                (3.0, 8.0),
                [Strength::Good, Strength::Weak, Strength::Good, Strength::Good],
            ),
            oil_partition: vec![partition(OilKind::Triglyceride, 7.5), partition(OilKind::Hydrocarbon, 0.02)],
            ..none()
        };
        let facts = with_inhibition(facts, [0.2, 0.35, 0.1, 0.06], [4.0, 4.0, 2.0, 2.0]);
        let methylparaben = bench.substance("Methylparaben", Class::Preservative, facts);
        let facts = Facts {
            charge: Some(cited(Charge::Cationic)),
            preservative: preservative(
                (0.05, 0.1),
                (4.0, 10.0),
                [Strength::Good, Strength::Fair, Strength::None, Strength::Fair],
            ),
            traits: vec![cited(Trait::CationicActive)],
            ..none()
        };
        bench.substance("Benzalkonium Chloride", Class::Preservative, facts);
        let facts = Facts {
            preservative: preservative(
                (0.1, 0.6),
                (3.0, 9.0),
                [Strength::Good, Strength::Good, Strength::Fair, Strength::Fair],
            ),
            ..with(&[Trait::FormaldehydeReleaser])
        };
        bench.substance("DMDM Hydantoin", Class::Preservative, facts);
        let oil = |hlb: f64| Facts { required_hlb: Some(cited(hlb)), density: Some(cited(0.92)), ..none() };
        bench.substance("Helianthus Annuus Seed Oil", Class::Oil, oil(7.0));
        bench.substance("Cetyl Alcohol", Class::FattyAlcohol, Facts { melting_point: Some(cited(50.0)), ..oil(15.5) });
        bench.substance("Cera Alba", Class::Wax, Facts { melting_point: Some(cited(65.0)), ..oil(9.0) });
        bench.substance(
            "Copernicia Cerifera Cera",
            Class::Wax,
            Facts { melting_point: Some(cited(86.0)), ..oil(15.0) },
        );
        bench.substance("Argania Spinosa Kernel Oil", Class::Oil, none());
        let emulsifier = |hlb: f64, traits: &[Trait]| Facts { hlb: Some(cited(hlb)), ..with(traits) };
        bench.substance("Polysorbate 60", Class::Emulsifier, emulsifier(14.9, &[Trait::Ethoxylate]));
        bench.substance("Sorbitan Stearate", Class::Emulsifier, emulsifier(4.7, &[]));
        bench.substance("Cetearyl Olivate", Class::Emulsifier, with(&[Trait::LamellarEmulsifier]));
        bench.substance("Polyglyceryl-3 Polyricinoleate", Class::Emulsifier, with(&[Trait::WaterInOilEmulsifier]));
        bench.substance("Sodium Stearoyl Glutamate", Class::Emulsifier, with(&[Trait::IonicEmulsifier]));
        bench.substance(
            "Xanthan Gum",
            Class::Thickener,
            Facts { charge: Some(cited(Charge::Anionic)), ..with(&[Trait::ClumpingPowder]) },
        );
        let facts = Facts {
            charge: Some(cited(Charge::Anionic)),
            ..with(&[Trait::SaltSensitiveThickener, Trait::ClumpingPowder, Trait::NeedsBase])
        };
        bench.substance("Carbomer", Class::Thickener, facts);
        bench.substance(
            "Sodium Chloride",
            Class::Salt,
            Facts {
                water_solubility: curve(&[(0.0, 35.65), (25.0, 35.96), (40.0, 36.4)]),
                ..with(&[Trait::Electrolyte])
            },
        );
        bench.substance(
            "Triethanolamine",
            Class::PhAdjuster,
            Facts { brings: brings("triethanolamine", 149.19, 0.0), ..with(&[Trait::Base]) },
        );
        bench.substance("Hydrolyzed Oats", Class::Protein, with(&[Trait::TakesFormaldehyde]));
        let facts = Facts { usual_ph: Some(cited(Span { low: 2.0, high: 3.5 })), ..with(&[Trait::Ascorbate]) };
        bench.substance("Ascorbic Acid", Class::Active, facts);
        bench.substance(
            "Sodium Laureth Sulfate",
            Class::Surfactant,
            Facts { charge: Some(cited(Charge::Anionic)), ..none() },
        );
        bench.substance(
            "Cocamidopropyl Betaine",
            Class::Surfactant,
            Facts { charge: Some(cited(Charge::Amphoteric)), ..none() },
        );
        let glycolic = Facts {
            acid: acid(3.83),
            brings: brings("lactic", 76.05, 0.0),
            ..with(&[Trait::AlphaHydroxyAcid, Trait::KeepFromEyes])
        };
        bench.substance("Glycolic Acid", Class::Active, glycolic);
        bench.substance(
            "Retinol",
            Class::Active,
            Facts {
                heat_sensitive: Some(TABLE),
                max_add_temperature: Some(cited(40.0)),
                ..with(&[Trait::Retinoid, Trait::OilSoluble])
            },
        );
        bench.substance(
            "Kojic Acid",
            Class::Active,
            Facts { usual_percent: Some(cited(Span { low: 0.2, high: 1.0 })), ..none() },
        );
        let inside = |name, most| InsideOil {
            name,
            allergen: Some(name),
            typical: Some(most * 0.7),
            most: Some(most),
            citation: TABLE,
        };
        bench.substance(
            "Lavandula Angustifolia Oil",
            Class::EssentialOil,
            Facts { inside: vec![inside("Linalool", 45.0), inside("Limonene", 0.5)], ..none() },
        );
        bench.substance(
            "Citrus Aurantium Bergamia Peel Oil",
            Class::EssentialOil,
            Facts { inside: vec![inside("Limonene", 50.0)], ..with(&[Trait::Phototoxic]) },
        );
        bench.substance("Tocopherol", Class::Antioxidant, with(&[Trait::OilAntioxidant]));
        bench.substance(
            "Sodium Hydroxide",
            Class::PhAdjuster,
            Facts { brings: brings("", 40.0, 1.0), ..with(&[Trait::Caustic, Trait::Base]) },
        );
        bench.substance("Zinc Oxide", Class::Mineral, with(&[Trait::Insoluble, Trait::UvFilter]));
        bench.substance(
            "Sodium Bicarbonate",
            Class::PhAdjuster,
            Facts {
                molar_mass: Some(cited(84.01)),
                brings: brings("carbonic", 84.01, 1.0),
                ..with(&[Trait::Carbonate])
            },
        );
        bench.substance(
            "Citric Acid",
            Class::PhAdjuster,
            Facts { brings: brings("citric", 192.12, 0.0), ..with(&[Trait::AcidOfCarbonate]) },
        );
        bench.substance("Potassium Cocoate", Class::Surfactant, with(&[Trait::Soap]));
        bench.substance("Cinnamomum Zeylanicum Bark Oil", Class::EssentialOil, with(&[Trait::Sensitiser]));
        bench.substance("Alpha-Arbutin", Class::Active, none());
        bench.substance(
            "Lecithin",
            Class::Emulsifier,
            Facts { hlb: Some(cited(4.0)), ..with(&[Trait::PlainLecithin]) },
        );
        for (subject, members, leave_on, preservative) in [
            ("Benzoic Acid", vec![(benzoic, 1.0), (benzoate, 122.12 / 144.1)], 0.5, true),
            ("Sorbic Acid", vec![(sorbic, 1.0), (sorbate, 112.13 / 150.22)], 0.6, true),
            ("Phenoxyethanol", vec![(phenoxyethanol, 1.0)], 1.0, true),
            ("Methylparaben", vec![(methylparaben, 138.12 / 152.15)], 0.4, true),
            ("Kojic Acid", vec![(bench.constituent("Kojic Acid"), 1.0)], 1.0, false),
        ] {
            bench.limits.push(limit(subject, members, leave_on, preservative));
        }
        for name in ["Linalool", "Limonene"] {
            bench.allergens.push(Allergen {
                name,
                members: Vec::new(),
                leave_on: 0.001,
                rinse_off: 0.01,
                jurisdiction: "EU",
                entry: "III/1",
                is_of_2023: false,
                citation: TABLE,
            });
        }
        bench.add_emulsions();
        bench.add_restricted();
        bench
    }

    /// What the emulsion family needs beyond the rest.
    fn add_emulsions(&mut self) {
        let none = Facts::default;
        let with = |traits: &[Trait]| Facts { traits: traits.iter().map(|each| cited(*each)).collect(), ..none() };
        let builder = Facts {
            required_hlb: Some(cited(15.5)),
            melting_point: Some(cited(56.0)),
            ..with(&[Trait::LamellarEmulsifier])
        };
        self.substance("Cetearyl Alcohol", Class::FattyAlcohol, builder);
        self.substance("Polysorbate 20", Class::Emulsifier, Facts { hlb: Some(cited(16.7)), ..none() });
        self.substance("Polyacrylate Crosspolymer-6", Class::Thickener, with(&[Trait::PolymericEmulsifier]));
        self.substance("Unknown Emulsifier", Class::Emulsifier, none());
        self.substance("Stearic Acid", Class::FattyAcid, Facts { melting_point: Some(cited(69.3)), ..none() });
        self.substance(
            "Rosa Canina Seed Oil",
            Class::Oil,
            Facts {
                required_hlb: Some(cited(7.0)),
                heat_sensitive: Some(TABLE),
                max_add_temperature: Some(cited(40.0)),
                ..with(&[Trait::Unsaturated])
            },
        );
        let emulsifiers = ["Polysorbate 60", "Sorbitan Stearate", "Polysorbate 20"];
        self.remedies = Remedies {
            emulsifiers: emulsifiers.map(|inci| self.constituent(inci)).to_vec(),
            lamellar_emulsifier: Some(self.constituent("Cetearyl Olivate")),
            solubiliser: Some(self.constituent("Polysorbate 20")),
            salt_tolerant_thickener: Some(self.constituent("Xanthan Gum")),
            dispersant: Some(self.constituent("Glycerin")),
            oil_antioxidant: Some(self.constituent("Tocopherol")),
            ready_systems: Vec::new(),
            acid: Some(self.constituent("Citric Acid")),
            base: Some(self.constituent("Triethanolamine")),
        };
    }

    /// What the limits family needs beyond the rest.
    fn add_restricted(&mut self) {
        let none = Facts::default;
        let with = |traits: &[Trait]| Facts { traits: traits.iter().map(|each| cited(*each)).collect(), ..none() };
        let lactic = Facts { molar_mass: Some(cited(90.08)), acid: acid(3.86), ..with(&[Trait::AlphaHydroxyAcid]) };
        let lactic = self.substance("Lactic Acid", Class::PhAdjuster, lactic);
        let lactate = self.substance(
            "Sodium Lactate",
            Class::Humectant,
            Facts {
                molar_mass: Some(cited(112.06)),
                salt_of: Some(SaltOf { acid: lactic, equivalents: 1.0, citation: TABLE }),
                ..none()
            },
        );
        let palmitate = self.substance("Retinyl Palmitate", Class::Active, with(&[Trait::Retinoid]));
        self.substance("Parfum", Class::Fragrance, none());
        let linalool = self.substance("Linalool", Class::Fragrance, none());
        let wintergreen = InsideOil {
            name: "Methyl Salicylate",
            allergen: None,
            typical: Some(98.5),
            most: Some(99.5),
            citation: TABLE,
        };
        self.substance(
            "Gaultheria Procumbens Leaf Oil",
            Class::EssentialOil,
            Facts { inside: vec![wintergreen], ..none() },
        );
        self.substance("Betaine", Class::Humectant, none());
        let (glycolic, retinol) = (self.constituent("Glycolic Acid"), self.constituent("Retinol"));
        let arbutin = self.constituent("Alpha-Arbutin");
        let hydroxide = self.constituent("Sodium Hydroxide");
        let bergamot = self.constituent("Citrus Aurantium Bergamia Peel Oil");
        let advice = |subject, members, most, least_ph| Limit {
            authority: Authority::Advice,
            least_ph,
            ..limit(subject, members, most, false)
        };
        self.limits.extend([
            advice("Glycolic and lactic acid", vec![(glycolic, 1.0), (lactic, 1.0), (lactate, 0.804)], 10.0, Some(3.5)),
            advice("Glycolic acid", vec![(glycolic, 1.0)], 4.0, Some(3.8)),
            Limit {
                group: "Vitamin A",
                kinds: vec![ProductKind::Body],
                ..limit("Vitamin A, body lotion", vec![(retinol, 1.0), (palmitate, 0.546)], 0.05, false)
            },
            Limit {
                group: "Vitamin A",
                ..limit("Vitamin A, other", vec![(retinol, 1.0), (palmitate, 0.546)], 0.3, false)
            },
            Limit {
                group: "Alpha-Arbutin",
                kinds: vec![ProductKind::Face],
                ..limit("Alpha-Arbutin, face", vec![(arbutin, 1.0)], 2.0, false)
            },
            Limit {
                group: "Alpha-Arbutin",
                kinds: vec![ProductKind::Body],
                ..limit("Alpha-Arbutin, body", vec![(arbutin, 1.0)], 0.5, false)
            },
            advice("Bergamot oil, pressed", vec![(bergamot, 1.0)], 0.4, None),
            Limit {
                leave_on: None,
                rinse_off: None,
                conditions: "product pH up to 11",
                ..limit("Sodium hydroxide", vec![(hydroxide, 1.0)], 0.0, false)
            },
            Limit { inside_oils: vec!["Methyl Salicylate"], ..limit("Methyl Salicylate", Vec::new(), 0.06, false) },
        ]);
        if let Some(allergen) = self.allergens.iter_mut().find(|allergen| allergen.name == "Linalool") {
            allergen.members.push(linalool);
        }
    }

    fn substance(&mut self, inci: &str, class: Class, facts: Facts) -> ConstituentId {
        let number = u32::try_from(self.constituents.len()).unwrap() + 1;
        let id = ConstituentId::Catalogue(number);
        if facts.preservative.is_some() {
            self.preservatives.push(id);
        }
        self.constituents.push(Constituent { id, inci: inci.to_owned(), class });
        self.facts.push(facts);
        self.materials.push(Material {
            id: MaterialId::Catalogue(number),
            name: inci.to_owned(),
            class,
            usual_phase: PhaseKind::HeatedWater,
            density: None,
            makeup: Makeup::Simple(id),
        });
        id
    }

    pub(crate) fn constituent(&self, inci: &str) -> ConstituentId {
        self.constituents.iter().find(|each| each.inci == inci).unwrap_or_else(|| panic!("no {inci}")).id
    }

    pub(crate) fn subject(&self, inci: &str) -> String {
        subject_of(self.constituent(inci))
    }

    pub(crate) fn material(&self, inci: &str) -> MaterialId {
        self.materials.iter().find(|each| each.name == inci).unwrap_or_else(|| panic!("no {inci}")).id
    }

    pub(crate) fn ph(&self, text: &str) -> Ph {
        Ph::new(Decimal::from_str_exact(text).unwrap()).unwrap()
    }

    /// A formula of phases with their lines; a line of percent `qs` takes up the rest.
    pub(crate) fn formula(&self, phases: &[(PhaseKind, &[(&str, &str)])]) -> Formula {
        let mut formula = Formula::with_name("test");
        for (kind, lines) in phases {
            let phase = formula.add_phase("phase", *kind, None);
            for (inci, percent) in *lines {
                let amount = match *percent {
                    "qs" => Amount::QuantumSatis,
                    percent => Amount::Percent(Percent::new(Decimal::from_str_exact(percent).unwrap()).unwrap()),
                };
                formula.add_line(phase, self.material(inci), amount);
            }
        }
        formula
    }

    /// Water to 100 % with other lines, in one phase at room temperature.
    pub(crate) fn water_with(&self, lines: &[(&str, &str)]) -> Formula {
        let lines: Vec<(&str, &str)> = [("Aqua", "qs")].into_iter().chain(lines.iter().copied()).collect();
        self.formula(&[(PhaseKind::RoomTemperature, &lines)])
    }

    /// Oil to 100 % with other lines, in one phase at room temperature.
    pub(crate) fn oil_with(&self, lines: &[(&str, &str)]) -> Formula {
        let oil = ("Helianthus Annuus Seed Oil", "qs");
        let lines: Vec<(&str, &str)> = [oil].into_iter().chain(lines.iter().copied()).collect();
        self.formula(&[(PhaseKind::RoomTemperature, &lines)])
    }

    pub(crate) fn check(&self, formula: &Formula) -> Vec<Finding> {
        let evaluation = evaluate(formula, &evaluation::Bench::default(), self, &mut Makeups::default());
        let mut contents = Contents::new(formula, &evaluation, self, self, Conditions::default());
        contents.charts = true;
        super::check(&contents)
    }

    pub(crate) fn cure(&self, formula: &Formula, cure: &Cure) -> Formula {
        let mut formula = formula.clone();
        formula.make_changes(&cure.changes, |_| "phase".to_owned());
        formula
    }

    /// Applies every cure of every finding with a code: each must remove it and raise no new stop.
    pub(crate) fn every_cure_cures(&self, formula: &Formula, code: &str) {
        let before = self.check(formula);
        let finding = find(&before, code);
        assert!(!finding.cures.is_empty(), "{code} has no cure");
        for cure in &finding.cures {
            let after = self.check(&self.cure(formula, cure));
            assert!(!has(&after, code, &finding.subject), "{} does not remove {code}: {after:#?}", cure.code);
            let new_stop = after
                .iter()
                .find(|each| each.severity == super::Severity::Stop && !has(&before, each.code, &each.subject));
            assert!(new_stop.is_none(), "{} raises {new_stop:#?}", cure.code);
        }
    }
}

fn preservative(usual: (f64, f64), ph: (f64, f64), spectrum: [Strength; 4]) -> Option<Preservative> {
    let span = |(low, high)| Some(cited(Span { low, high }));
    Some(Preservative {
        usual: span(usual),
        ph: span(ph),
        max_add_temperature: Some(cited(60.0)),
        carries: true,
        spectrum,
        inhibits: [None; 4],
        citation: TABLE,
    })
}

/// The facts of a preservative with what stops each kind of microbe.
fn with_inhibition(mut facts: Facts, percent: [f64; 4], to_kill: [f64; 4]) -> Facts {
    if let Some(preservative) = &mut facts.preservative {
        preservative.inhibits = inhibits(percent, to_kill);
    }
    facts
}

/// What stops Gram-positive and Gram-negative bacteria, yeasts and moulds, in percent of the acting form, and how many times
/// that kills.
fn inhibits(percent: [f64; 4], to_kill: [f64; 4]) -> [Option<Inhibition>; 4] {
    core::array::from_fn(|at| Some(Inhibition { percent: percent[at], to_kill: to_kill[at], citation: TABLE }))
}

fn partition(kind: OilKind, coefficient: f64) -> OilPartition {
    OilPartition { kind, oil: "an oil", coefficient, citation: TABLE }
}

fn limit(subject: &'static str, members: Vec<(ConstituentId, f64)>, leave_on: f64, preservative: bool) -> Limit {
    Limit {
        subject,
        group: "",
        kinds: Vec::new(),
        named: Vec::new(),
        from: "",
        members,
        inside_oils: Vec::new(),
        expressed_as: "acid",
        leave_on: Some(leave_on),
        rinse_off: Some(leave_on),
        least_ph: None,
        authority: Authority::Law,
        preservative,
        jurisdiction: "EU",
        as_of: "2024-02",
        entry: "1",
        conditions: "",
        citation: TABLE,
    }
}

impl MaterialSource for Bench {
    fn material(&self, id: MaterialId) -> Option<&Material> {
        self.materials.iter().find(|material| material.id == id)
    }
    fn constituent(&self, id: ConstituentId) -> Option<&Constituent> {
        self.constituents.iter().find(|constituent| constituent.id == id)
    }
}

impl Knowledge for Bench {
    fn facts(&self, constituent: ConstituentId) -> Option<&Facts> {
        let place = self.constituents.iter().position(|each| each.id == constituent)?;
        self.facts.get(place)
    }
    fn cosolvent(&self, constituent: ConstituentId) -> Option<(Cosolvent, f64)> {
        match MaterialSource::constituent(self, constituent)?.inci.as_str() {
            "Glycerin" => Some((Cosolvent::Glycerin, 1.258)),
            "Propylene Glycol" => Some((Cosolvent::Glycol, 1.033)),
            "Alcohol" => Some((Cosolvent::Ethanol, 0.785)),
            _ => None,
        }
    }
    fn material_of(&self, constituent: ConstituentId) -> Option<MaterialId> {
        self.materials.iter().find(|each| each.makeup == Makeup::Simple(constituent)).map(|each| each.id)
    }
    fn preservatives(&self) -> &[ConstituentId] {
        &self.preservatives
    }
    fn limits(&self) -> &[Limit] {
        &self.limits
    }
    fn allergens(&self) -> &[Allergen] {
        &self.allergens
    }
    fn remedies(&self) -> &Remedies {
        &self.remedies
    }
}

pub(crate) fn codes(findings: &[Finding]) -> Vec<&'static str> {
    findings.iter().map(|finding| finding.code).collect()
}

pub(crate) fn find<'a>(findings: &'a [Finding], code: &str) -> &'a Finding {
    findings.iter().find(|each| each.code == code).unwrap_or_else(|| panic!("no {code} in {:?}", codes(findings)))
}

pub(crate) fn has(findings: &[Finding], code: &str, subject: &str) -> bool {
    findings.iter().any(|each| each.code == code && each.subject == subject)
}

/// A temperature, for phases in tests.
pub(crate) fn celsius(text: &str) -> Celsius {
    Celsius::new(Decimal::from_str_exact(text).unwrap()).unwrap()
}

/// The line of a material, for tests that change it.
pub(crate) fn line_of(formula: &Formula, material: MaterialId) -> LineId {
    formula.lines().find(|line| line.material == material).unwrap().id
}
