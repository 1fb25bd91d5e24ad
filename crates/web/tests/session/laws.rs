//! What holds whatever a maker does, over commands drawn at random.

use crate::{open, open_on, seen};
use proptest::prelude::*;
use stillroom_core::batch_plan::BatchWay;
use stillroom_core::{Class, LineId, MaterialId, PhaseId, PhaseKind, Purpose, WrittenIn};
use stillroom_web::lazy::{Piece, set_here};
use stillroom_web::rooms::bench::command::BenchCommand;
use stillroom_web::rooms::command::{Command, DeskCommand};
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::materials::command::{HoldingField, MaterialField, MaterialsCommand};
use stillroom_web::rooms::shelf::command::{Example, ShelfCommand};
use stillroom_web::session::keeping::MemoryStore;
use stillroom_web::session::settings::SettingName;
fn any_text() -> impl Strategy<Value = String> {
    prop_oneof![
        4 => "[0-9]{1,3}([.,][0-9]{0,3})?( ?(%|g|oz|ml|kg))?",
        1 => Just("q.s.".to_owned()),
        2 => "\\PC{0,12}",
        1 => Just(String::new()),
    ]
}

fn any_material() -> impl Strategy<Value = MaterialId> {
    prop_oneof![
        6 => (1u32..160).prop_map(MaterialId::Catalogue),
        2 => (0x1000u64..0x1010).prop_map(MaterialId::Own),
        1 => (0x1000u64..0x1010).prop_map(MaterialId::Formula),
        1 => Just(MaterialId::Formula(0x0cc0_0a7e)),
        1 => any::<u64>().prop_map(MaterialId::Own),
    ]
}

fn any_command() -> impl Strategy<Value = Command> {
    let line = || (0u32..24).prop_map(LineId);
    let phase = || (0u32..24).prop_map(PhaseId);
    let kind = || prop::sample::select(PhaseKind::ALL.to_vec());
    prop_oneof![
        (line(), any_text()).prop_map(|(line, text)| Command::from(FormulaCommand::SetAmount { line, text })),
        (line(), any_text()).prop_map(|(line, text)| Command::from(FormulaCommand::SetAmount { line, text })),
        line().prop_map(|line| Command::from(FormulaCommand::SetQuantumSatis { line })),
        (phase(), any_material())
            .prop_map(|(phase, material)| Command::from(FormulaCommand::AddLine { phase, material })),
        line().prop_map(|line| Command::from(FormulaCommand::RemoveLine { line })),
        (line(), any::<bool>()).prop_map(|(line, down)| Command::from(FormulaCommand::StepLine { line, down })),
        (line(), phase(), 0usize..9).prop_map(|(line, phase, position)| Command::from(FormulaCommand::MoveLine {
            line,
            phase,
            position
        })),
        (line(), any_material())
            .prop_map(|(line, material)| Command::from(FormulaCommand::ReplaceMaterial { line, material })),
        kind().prop_map(|kind| Command::from(FormulaCommand::AddPhase { kind })),
        phase().prop_map(|phase| Command::from(FormulaCommand::RemovePhase { phase })),
        (phase(), any_text())
            .prop_map(|(phase, text)| Command::from(FormulaCommand::SetPhaseTemperature { phase, text })),
        any::<bool>().prop_map(|grams| Command::from(FormulaCommand::WriteIn {
            basis: if grams { WrittenIn::Grams } else { WrittenIn::Percent }
        })),
        (0usize..3, 0usize..3).prop_map(|(problem, cure)| Command::from(FormulaCommand::ApplyCure {
            code: "formula.total-not-100".into(),
            problem,
            cure
        })),
        any_text().prop_map(|text| Command::from(BenchCommand::SetBatchMass { text })),
        any_text().prop_map(|text| Command::from(BenchCommand::SetContainerVolume { text })),
        any_text().prop_map(|text| Command::from(BenchCommand::SetLoss { text })),
        any_text().prop_map(|text| Command::from(BenchCommand::SetDensity { text })),
        (any_material(), any_text())
            .prop_map(|(material, text)| Command::from(BenchCommand::SetStock { material, text })),
        prop::sample::select(vec![BatchWay::Mass, BatchWay::Containers, BatchWay::Stock])
            .prop_map(|way| Command::from(BenchCommand::SetBatchWay { way })),
        (prop::sample::select(vec![SettingName::MainStep, SettingName::FineStep, SettingName::FineBelow]), any_text())
            .prop_map(|(name, text)| Command::from(BenchCommand::SetSetting { name, text })),
        any::<bool>()
            .prop_map(|composite| Command::from(MaterialsCommand::NewMaterial { composite, name: String::new() })),
        any_material().prop_map(|material| Command::from(MaterialsCommand::OpenMaterial { material })),
        any_material().prop_map(|material| Command::from(MaterialsCommand::AddPart { material })),
        (0usize..4, any_text()).prop_map(|(part, text)| Command::from(MaterialsCommand::SetPartAmount { part, text })),
        any_text()
            .prop_map(|text| Command::from(MaterialsCommand::SetMaterialText { field: MaterialField::Inci, text })),
        Just(Command::from(MaterialsCommand::SetMaterialClass { class: Class::Active })),
        any_material().prop_map(|material| Command::from(MaterialsCommand::DeleteMaterial { material })),
        (
            any_material(),
            prop::sample::select(vec![
                HoldingField::Density,
                HoldingField::Price,
                HoldingField::Stock,
                HoldingField::Expiry
            ]),
            any_text()
        )
            .prop_map(|(material, field, text)| Command::from(MaterialsCommand::SetHolding {
                material,
                field,
                text
            })),
        Just(Command::from(ShelfCommand::NewFormula { basis: WrittenIn::Percent })),
        Just(Command::from(FormulaCommand::SetPurpose { purpose: Purpose::RinseOff })),
        Just(Command::from(ShelfCommand::SeeExample { example: Example::GelCream })),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_done_can_be_taken_back_and_done_again(commands in prop::collection::vec(any_command(), 1..40)) {
        let mut session = open();
        let before = seen(&mut session);
        let acts = commands.len();
        for command in commands {
            session.apply(command);
        }
        let after = seen(&mut session);
        for _ in 0..acts {
            session.apply(DeskCommand::Undo {});
        }
        prop_assert_eq!(seen(&mut session), before);
        for _ in 0..acts {
            session.apply(DeskCommand::Redo {});
        }
        prop_assert_eq!(seen(&mut session), after);
    }

    #[test]
    fn what_was_done_before_the_rest_was_fetched_is_the_same_and_can_be_taken_back(
        commands in prop::collection::vec(any_command(), 1..20)
    ) {
        // Own materials are a room of what is fetched.
        let of_main_job = |command: &Command| !matches!(command, Command::Materials(_));
        let commands: Vec<Command> = commands.into_iter().filter(of_main_job).collect();
        let store = MemoryStore::default();
        let mut with_everything = open_on(&MemoryStore::default());
        let before = seen(&mut with_everything);
        for piece in Piece::BEYOND_DESK {
            set_here(piece, false);
        }
        let mut first_visit = open_on(&store);
        for command in &commands {
            first_visit.apply(command.clone());
        }
        first_visit.keep();
        for piece in Piece::BEYOND_DESK {
            set_here(piece, true);
        }
        first_visit.whole_arrived();
        for command in &commands {
            with_everything.apply(command.clone());
        }
        prop_assert_eq!(seen(&mut first_visit), seen(&mut with_everything));
        for _ in 0..commands.len() {
            first_visit.apply(DeskCommand::Undo {});
        }
        prop_assert_eq!(seen(&mut first_visit), before);
    }

    #[test]
    fn the_parts_handed_out_add_up_to_the_whole(commands in prop::collection::vec(any_command(), 1..25)) {
        let mut session = open();
        let first = session.show_everything();
        let mut lines: Vec<_> = first.lines;
        let mut formula = first.formula.unwrap();
        for command in commands {
            let update = session.apply(command);
            if let Some(changed) = update.formula {
                if changed.id != formula.id {
                    lines.clear();
                }
                formula = changed;
            }
            for line in update.lines {
                lines.retain(|each| each.id != line.id);
                lines.push(line);
            }
        }
        let whole = session.show_everything();
        prop_assert_eq!(&formula, whole.formula.as_ref().unwrap());
        let wanted: Vec<u32> = formula.phases.iter().flat_map(|phase| phase.lines.clone()).collect();
        let held: Vec<_> = wanted.iter().map(|id| lines.iter().find(|line| line.id == *id).unwrap()).collect();
        let all: Vec<_> = wanted.iter().map(|id| whole.lines.iter().find(|line| line.id == *id).unwrap()).collect();
        prop_assert_eq!(held, all);
    }

    #[test]
    fn what_a_session_keeps_another_shows_alike(commands in prop::collection::vec(any_command(), 1..30)) {
        let store = MemoryStore::default();
        let mut session = open_on(&store);
        for command in commands {
            session.apply(command);
        }
        session.keep();
        let open = session.show_everything().shelf.unwrap().open;
        let mut again = open_on(&store);
        if let Some(open) = open {
            again.apply(ShelfCommand::OpenFormula { formula: open.try_into().unwrap() });
        }
        prop_assert_eq!(seen(&mut session), seen(&mut again));
    }
}
