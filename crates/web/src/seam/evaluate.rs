//! One formula worked out beside any session: for embedders, tests and Node. Reads records as they are kept, keeps
//! nothing.

use crate::contract::Answer;
use crate::messages::sentences;
use crate::rooms::bench::command::BenchCommand;
use crate::rooms::share::reading::Nowhere;
use crate::rooms::update::Update;
use crate::session::keeping::{MemoryStore, Store as _};
use crate::session::{FORMULA_KEY, MATERIAL_KEY, Session};
use serde::{Deserialize, Serialize};
use stillroom_core::batch_plan::BatchWay;
use stillroom_core::number::DecimalMark;
use tsify::Tsify;

/// How a formula is to be worked out and written.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(rename_all = "camelCase", default)]
pub struct EvaluationOptions {
    /// Mark between whole and fraction; a point unless another is asked for.
    #[tsify(type = "\"point\" | \"comma\"")]
    pub decimal_mark: DecimalMark,
    /// A batch by mass, as typed, instead of the one the record asks for.
    pub batch: Option<String>,
}

/// Works out a formula: its head, lines, jar, constituents with their trails, and batch. A formula or batch that is not understood is an
/// error in [`Update::answer`]; materials that are not are named in [`Update::status`].
#[must_use]
pub fn evaluate_record(formula: &str, own_materials: &[String], options: &EvaluationOptions) -> Update {
    let store = MemoryStore::default();
    let formula_key = format!("{FORMULA_KEY}0");
    // A store in memory refuses nothing.
    let _ = store.set(&formula_key, formula);
    for (at, material) in own_materials.iter().enumerate() {
        let _ = store.set(&format!("{MATERIAL_KEY}{at}"), material);
    }
    let mut session = Session::open(Box::new(store), Box::new(Nowhere), options.decimal_mark);
    session.hands_out_trails = true;
    let mut update = Update::default();
    if let Some(error) = session.unreadable.get(&formula_key) {
        let error = Answer {
            error: Some(sentences::unreadable(&formula_key, error)),
            code: Some(error.code()),
            ..Answer::default()
        };
        update.answer = Some(error);
    } else if let Some(text) = &options.batch {
        session.act_on_bench(BenchCommand::SetBatchWay { way: BatchWay::Mass });
        update.answer = Some(session.act_on_bench(BenchCommand::SetBatchMass { text: text.clone() }));
    }
    session.present_formula(&mut update);
    if !session.unreadable.is_empty() {
        update.status = Some(session.present_status());
    }
    update
}

#[cfg(test)]
mod tests {
    use super::*;

    const KEPT: &str = include_str!("../../../exchange/golden/formula-1.json");

    fn evaluate(formula: &str, options: &EvaluationOptions) -> Update {
        evaluate_record(formula, &[], options)
    }

    #[test]
    fn own_materials_come_along_as_their_records() {
        let formula = KEPT.replace("\"c2\"", "\"o00000000000000b7\"");
        let own = r#"{"schema":1,"revision":1,"changed_at":0,"own":{"material":{"id":"o00000000000000b7","name":"Glycerite","class":"extract","usual_phase":"cool-down","makeup":{"Composite":[{"material":"c2","amount":{"percent":"65"}},{"material":"c1","amount":"quantum-satis"}]}}}}"#;
        let update = evaluate_record(&formula, &[own.to_owned()], &EvaluationOptions::default());
        assert_eq!(update.jar.unwrap().unresolved, Vec::<String>::new());
        let glycerin = update.constituents.iter().find(|each| each.inci == "Glycerin").unwrap();
        assert_eq!(glycerin.percent, "7.80");
        // No page asks for more, so what each line brings comes along.
        let trail: Vec<(u32, &str)> = glycerin.trail.iter().map(|each| (each.line, each.percent.as_str())).collect();
        assert_eq!(trail, [(update.lines[1].id, "7.80")]);
    }

    #[test]
    fn a_kept_formula_is_worked_out_without_a_session() {
        let update = evaluate(KEPT, &EvaluationOptions::default());
        assert_eq!(update.answer, None);
        assert_eq!(update.formula.map(|formula| formula.name), Some("Cucumber and oat gel cream".to_owned()));
        // The record holds 12.00 % and a q.s. line; what is left of 100 is 88.
        let percents: Vec<String> = update.lines.iter().map(|line| line.percent.trim().to_owned()).collect();
        assert_eq!(percents, ["88.00", "12.00"]);
    }

    #[test]
    fn options_choose_the_mark_and_the_batch() {
        let options = EvaluationOptions { decimal_mark: DecimalMark::Comma, batch: Some("50 g".to_owned()) };
        let update = evaluate(KEPT, &options);
        assert_eq!(update.lines[1].percent.trim(), "12,00");
        // 88 % and 12 % of 50 g are 44 g and 6 g.
        let masses: Vec<&str> =
            update.lines.iter().map(|line| line.mass.trim().split(',').next().unwrap_or_default()).collect();
        assert_eq!(masses, ["44", "6"]);
        let options = EvaluationOptions { batch: Some("a bowlful".to_owned()), ..options };
        assert!(evaluate(KEPT, &options).answer.and_then(|answer| answer.error).is_some());
    }

    #[test]
    fn what_cannot_be_read_is_data() {
        let damaged = evaluate("{\"schema\":1", &EvaluationOptions::default());
        assert_eq!(damaged.answer.and_then(|answer| answer.code), Some("record.damaged"));
        let update = evaluate_record(KEPT, &["no record".to_owned()], &EvaluationOptions::default());
        assert_eq!(update.status.map(|status| status.unreadable.len()), Some(1));
    }
}
