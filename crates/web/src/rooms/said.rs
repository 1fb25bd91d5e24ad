//! What is said whatever the room: what a field takes, how keeping stands, what can be taken back.

use crate::contract::KeepState;
use crate::lazy::lazy;
use crate::messages::{common, desk};
use crate::rooms::batches::sentences as sentences_run;
use crate::rooms::extracts::sentences as sentences_extract;
use crate::rooms::ph::sentences as sentences_ph;
use rust_decimal::Decimal;
use stillroom_core::number::{DecimalMark, write_fixed};

/// What a field takes, to be said where its text was not understood.
pub(crate) fn what_field_takes(field: &str, mark: DecimalMark) -> String {
    let number = |units: i64, decimals: u32| write_fixed(Decimal::new(units, decimals), decimals, mark);
    let half = number(15, 1);
    let kind = field.split(':').next().unwrap_or(field);
    match kind {
        "amount" => common::takes_amount(&half),
        "part" => common::takes_part(&half),
        "batch.count" => common::takes_count().to_owned(),
        "batch.volume" => common::takes_volume().to_owned(),
        "batch.headspace" | "batch.loss" => common::takes_allowance().to_owned(),
        "batch.density" | "material.density" | "holding.density" => common::takes_density(&number(98, 2)),
        "holding.price" | "holding.shipping" => common::takes_price().to_owned(),
        "formula.ph" => common::takes_ph(&number(55, 1)),
        "phase.temperature" => common::takes_temperature().to_owned(),
        "setting.tolerance" => common::takes_tolerance(&number(5, 0)),
        kind if ["extract.", "run.", "ph.", "swap.", "label.", "cost."].iter().any(|room| kind.starts_with(room)) => {
            what_field_beyond_takes(kind, field, mark)
        }
        _ => common::takes_mass(&half),
    }
}

/// How keeping stands.
pub(crate) fn keep_state(state: KeepState, at: Option<u64>, minutes_ahead: i64) -> String {
    match state {
        KeepState::Kept => {
            at.map_or_else(|| desk::kept().to_owned(), |at| desk::kept_at(&time_of_day(at, minutes_ahead)))
        }
        KeepState::Keeping => desk::keeping().to_owned(),
        KeepState::Full => desk::store_full().to_owned(),
        KeepState::Blocked => desk::store_blocked().to_owned(),
        KeepState::Conflict => desk::changed_in_other_tab().to_owned(),
    }
}

fn time_of_day(at: u64, minutes_ahead: i64) -> String {
    let minutes = i64::try_from(at / 60_000).unwrap_or(0).saturating_add(minutes_ahead).rem_euclid(24 * 60);
    format!("{:02}:{:02}", minutes / 60, minutes % 60)
}

/// What an act is called, for undo and redo.
pub(crate) fn act_name(act: &str) -> &'static str {
    match act {
        "formula.new" => desk::act_formula_new(),
        "formula.duplicate" => desk::act_formula_duplicate(),
        "formula.rename" => desk::act_formula_rename(),
        "formula.delete" => desk::act_formula_delete(),
        "formula.example" => desk::act_formula_example(),
        "formula.purpose" => desk::act_formula_purpose(),
        "formula.ph" => desk::act_formula_ph(),
        "formula.measured-ph" => desk::act_formula_measured_ph(),
        "formula.kind" => desk::act_formula_kind(),
        "formula.tags" => desk::act_formula_tags(),
        "formula.notes" => desk::act_formula_notes(),
        "formula.steps" => desk::act_formula_steps(),
        "formula.write-in" => desk::act_formula_write_in(),
        "formula.keep-copy" => desk::act_formula_keep_copy(),
        "formula.version" => desk::act_formula_version(),
        "backup.restore" => desk::act_backup_restore(),
        "formula.cure" | "finding.cure" => desk::act_cure(),
        "finding.set-aside" => desk::act_finding_set_aside(),
        "finding.take-back" => desk::act_finding_take_back(),
        "line.suspend" => desk::act_line_suspend(),
        "phase.add" => desk::act_phase_add(),
        "phase.rename" => desk::act_phase_rename(),
        "phase.kind" => desk::act_phase_kind(),
        "phase.temperature" => desk::act_phase_temperature(),
        "phase.move" => desk::act_phase_move(),
        "phase.remove" => desk::act_phase_remove(),
        "line.add" => desk::act_line_add(),
        "line.amount" => desk::act_line_amount(),
        "line.qs" => desk::act_line_rest(),
        "line.note" => desk::act_line_note(),
        "line.move" => desk::act_line_move(),
        "line.replace" => desk::act_line_replace(),
        "line.remove" => desk::act_line_remove(),
        "batch.way" | "batch.mass" | "batch.count" | "batch.volume" | "batch.headspace" | "batch.loss"
        | "batch.density" => desk::act_batch_size(),
        "batch.stock" | "batch.stock-remove" => desk::act_batch_stock(),
        "settings" => desk::act_settings(),
        "material.new" => desk::act_material_new(),
        "material.copy" => desk::act_material_copy(),
        "material.delete" => desk::act_material_delete(),
        "material.holding" => desk::act_material_holding(),
        "material.import" => desk::act_material_import(),
        "part.add" | "part.amount" | "part.remove" => desk::act_parts(),
        act if act.starts_with("material.") => desk::act_material(),
        act if ["extract.", "run.", "ph.", "swap.", "paste.", "label.", "post.", "cost."]
            .iter()
            .any(|room| act.starts_with(room)) =>
        {
            name_of_act_beyond(act)
        }
        _ => desk::act_last_change(),
    }
}

lazy! {
    whole "06" fn what_field_beyond_takes(kind: &str, field: &str, mark: DecimalMark) -> String {
        if kind.starts_with("run.") {
            sentences_run::what_field_takes(kind, mark)
        } else if kind.starts_with("ph.") {
            sentences_ph::what_field_takes(kind, mark)
        } else if kind.starts_with("swap.") {
            crate::messages::swap::takes_figure().to_owned()
        } else if kind.starts_with("label.") {
            crate::rooms::label::sentences::what_field_takes(kind, mark)
        } else if kind.starts_with("cost.") {
            crate::rooms::costs::sentences::what_field_takes(field)
        } else {
            sentences_extract::what_field_takes(field, mark)
        }
    } else { String::new() }
}

lazy! {
    whole "07" fn name_of_act_beyond(act: &str) -> &'static str {
        if act.starts_with("run.") {
            sentences_run::act_name(act)
        } else if act.starts_with("ph.") {
            crate::messages::ph::act_name()
        } else if act == "swap.note" {
            crate::messages::swap::act_note()
        } else if act.starts_with("swap.") {
            crate::messages::swap::act_name()
        } else if act.starts_with("label.") {
            crate::messages::label::act_name()
        } else if act.starts_with("post.") {
            crate::messages::post::act_name()
        } else if act == "cost.prices" {
            crate::messages::costs::act_prices()
        } else if act.starts_with("cost.") {
            crate::messages::costs::act_name()
        } else if act.starts_with("paste.") {
            crate::messages::paste::act_name()
        } else {
            sentences_extract::act_name(act)
        }
    } else { desk::act_last_change() }
}
