//! Every limit can fire: what the maker describes under a name of the law is found, whatever the catalogue has.
#![allow(clippy::unwrap_used, reason = "a test may stop where what it is made of is wrong")]

use rust_decimal::Decimal;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::facts::{Authority, Knowledge as _};
use stillroom_core::checks::{Conditions, Contents, Severity, check};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, evaluate};
use stillroom_core::{
    Amount, Class, Constituent, ConstituentId, Formula, Makeup, Material, MaterialId, MaterialSource, Percent,
    PhaseKind, Purpose,
};

/// The catalogue with one material of the maker's own.
struct WithOwn(Constituent, Material);

impl MaterialSource for WithOwn {
    fn material(&self, id: MaterialId) -> Option<&Material> {
        if id == self.1.id { Some(&self.1) } else { Catalogue::get().material(id) }
    }
    fn constituent(&self, id: ConstituentId) -> Option<&Constituent> {
        if id == self.0.id { Some(&self.0) } else { Catalogue::get().constituent(id) }
    }
}

/// What is found in a product of which a fifth is the maker's own material of a name.
fn found(name: &str, purpose: Purpose) -> Vec<(&'static str, Severity)> {
    let (id, inci, class) = (ConstituentId::Own(7), name.to_owned(), Class::Other);
    let own = Material {
        id: MaterialId::Own(7),
        name: "own".to_owned(),
        class,
        usual_phase: PhaseKind::RoomTemperature,
        density: None,
        makeup: Makeup::Simple(id),
    };
    let source = WithOwn(Constituent { id, inci, class }, own);
    let mut formula = Formula::with_name("named");
    formula.set_purpose(purpose);
    let phase = formula.add_phase("phase", PhaseKind::RoomTemperature, None);
    formula.add_line(phase, MaterialId::Catalogue(1), Amount::QuantumSatis);
    formula.add_line(phase, MaterialId::Own(7), Amount::Percent(Percent::new(Decimal::from(45)).unwrap()));
    let evaluation = evaluate(&formula, &Bench::default(), &source, &mut Makeups::default());
    let contents = Contents::new(&formula, &evaluation, &source, knowledge(), Conditions::default());
    check(&contents).into_iter().map(|finding| (finding.code, finding.severity)).collect()
}

#[test]
fn an_own_material_named_as_the_law_names_what_it_forbids_is_a_stop() {
    for name in
        ["Hydroquinone", "TRETINOIN", "Cyclotetrasiloxane", "4-Methylbenzylidene Camphor", "Methylisothiazolinone"]
    {
        let found = found(name, Purpose::LeaveOn);
        assert!(found.iter().any(|(_, severity)| *severity == Severity::Stop), "{name}: {found:?}");
    }
    assert!(!found("Aqua Dulcis", Purpose::LeaveOn).iter().any(|(code, _)| code.starts_with("limits.over-legal")));
}

#[test]
fn every_limit_fires_for_something() {
    let codes = ["limits.over-legal", "preservation.over-limit", "limits.conditions"];
    for limit in knowledge().limits().iter().filter(|limit| limit.members.is_empty() && limit.inside_oils.is_empty()) {
        assert!(!limit.named.is_empty(), "{} is reached by nothing", limit.subject);
        let fires = |name: &str| {
            [Purpose::LeaveOn, Purpose::RinseOff]
                .into_iter()
                .any(|purpose| found(name, purpose).iter().any(|(code, _)| codes.contains(code)))
        };
        // A row for one kind of product speaks only where the kind is stated.
        if limit.kinds.is_empty() && limit.authority == Authority::Law {
            assert!(limit.named.iter().all(|(name, _)| fires(name)), "{} does not fire", limit.subject);
        }
    }
}
