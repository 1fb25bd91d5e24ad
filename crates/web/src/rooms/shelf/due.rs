//! What is due today: batches to look at, and materials to use before their day.

use crate::messages::shelf as says;
use crate::rooms::shelf::view::DueToday;
use crate::session::Session;

impl Session {
    pub(crate) fn present_due(&self) -> Vec<DueToday> {
        let looks = self.batches.values().filter_map(|record| {
            let journal = self.present_journal(record);
            // The last of the days that are past says what the ones before it would.
            let due = journal.due.into_iter().rfind(|due| matches!(due.state, "due" | "overdue"))?;
            let batch = &record.batch;
            Some(DueToday {
                act: "look",
                key: record.id.to_string(),
                name: says::due_look(&batch.plan.formula.name, &due.label),
                about: says::due_batch(&batch.lot),
                late: due.state == "overdue",
            })
        });
        let materials = self.present_held().into_iter().filter(|held| held.late).map(|held| DueToday {
            act: "use",
            key: held.id,
            name: held.name,
            about: if held.stock.is_empty() { held.until } else { says::due_stock(&held.until, &held.stock) },
            late: true,
        });
        looks.chain(materials).collect()
    }
}
