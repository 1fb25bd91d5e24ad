//! Lot and dates of a label: of the batch made last, or of one made today.

use crate::messages::label as says;
use crate::rooms::batches::sentences::day;
use crate::rooms::label::fields::Filled;
use crate::session::Session;
use stillroom_core::run::state::replay;
use stillroom_core::shelf_life::Dates;
use stillroom_exchange::record::FormulaRecord;

/// Longest life of a product, in months, that a label names by the month alone: what keeps shorter is named to the day.
const BY_MONTH: u32 = 3;

/// Lot and dates.
pub(crate) struct Lasting {
    /// Lot of the batch made last; empty where none was made.
    pub(crate) lot: String,
    /// How long it keeps.
    pub(crate) dates: Option<Dates>,
    /// Whether a batch was made; otherwise it is reckoned from today.
    pub(crate) made: bool,
}

impl Session {
    pub(crate) fn lasting(&mut self, record: &FormulaRecord) -> Lasting {
        let last =
            self.batches.values().filter(|batch| batch.batch.of == record.id).max_by_key(|batch| batch.changed_at);
        if let Some(last) = last.map(std::rc::Rc::clone) {
            let batch = &last.batch;
            let state = replay(&batch.plan, &batch.events);
            let dates = self.work_out_dates_of(&batch.plan.formula, &batch.materials, state.as_ref());
            Lasting { lot: batch.lot.clone(), dates, made: true }
        } else {
            let used = self.materials_to_use(&record.formula);
            let dates = self.work_out_dates_of(&record.formula, &used, None);
            Lasting { lot: String::new(), dates, made: false }
        }
    }
}

impl Lasting {
    /// The date as a label writes it: the last month that is over by then, or the day where it keeps a few months only.
    pub(crate) fn before(&self) -> String {
        let Some(dates) = self.dates.as_ref().filter(|dates| dates.date_required) else { return String::new() };
        let Some(last) = dates.best_before else { return String::new() };
        if dates.months.is_none_or(|months| months <= BY_MONTH) {
            return day(last);
        }
        let next = last.plus_days(1).unwrap_or(last);
        let (year, month) = match (next.year(), next.month()) {
            (year, 1) => (year - 1, 12),
            (year, month) => (year, month - 1),
        };
        format!("{month:02}/{year}")
    }

    /// Months after opening that such a product usually has, the careful end; empty where a date stands on the label instead,
    /// or where there is no such time.
    pub(crate) fn opening(&self) -> String {
        let Some(dates) = self.dates.as_ref().filter(|dates| !dates.date_required) else { return String::new() };
        dates.after_opening.map_or_else(String::new, |(fewest, _)| fewest.to_string())
    }

    /// By which rule it is the one or the other.
    pub(crate) fn rule(&self, filled: &Filled) -> String {
        match &self.dates {
            Some(dates) if !filled.text("before").is_empty() && dates.date_required => says::date_own().to_owned(),
            Some(dates) if dates.best_before.is_none() => says::date_unknown().to_owned(),
            Some(dates) if dates.date_required && self.made => says::date_of_batch(&self.lot),
            Some(dates) if dates.date_required => says::date_of_today().to_owned(),
            Some(_) => says::date_opening().to_owned(),
            None => says::date_unknown().to_owned(),
        }
    }
}
