//! Acts on the costs: what is filled in.

use crate::contract::Answer;
use crate::messages::materials as says_materials;
use crate::rooms::bench::command::BenchCommand;
use crate::rooms::costs::command::CostsCommand;
use crate::rooms::costs::fields::{Takes, is_of_maker, kept_name, takes};
use crate::rooms::formula::edit::about;
use crate::session::Session;
use rust_decimal::Decimal;
use stillroom_core::Currency;
use stillroom_core::batch_plan::{BatchWay, MOST_CONTAINERS};
use stillroom_core::number::{NumberError, read_plain, read_volume};
use stillroom_exchange::label::LabelFields;

/// Longest name of a kind of container, in characters.
const LONGEST_KIND_NAME: usize = 60;

/// Whether the page shows the costs.
#[derive(Debug, Default, Clone, Copy)]
pub(crate) struct CostsDesk {
    pub(crate) looking: bool,
}

impl Session {
    pub(crate) fn act_on_costs(&mut self, command: CostsCommand) -> Answer {
        match command {
            CostsCommand::LookAtCosts { looking } => {
                self.waiting.of::<CostsDesk>().looking = looking;
                Answer::default()
            }
            CostsCommand::SetCostField { field, text } => self.set_cost_field(&field, &text),
            CostsCommand::AddContainerKind {} => self.add_kind(),
            CostsCommand::RemoveContainerKind { kind } => self.remove_kind(&kind),
            CostsCommand::PlanContainerKinds {} => self.plan_kinds(),
            CostsCommand::TakePrices {} => self.take_prices(),
        }
    }

    fn set_cost_field(&mut self, field: &str, text: &str) -> Answer {
        let text = text.trim();
        match field {
            // How much is made has its home with the batch: the bench and this room are two sides of it.
            "batch.count" => self.set_units(text),
            "batch.volume" => self.act_on_bench(BenchCommand::SetContainerVolume { text: text.to_owned() }),
            "batch.headspace" => self.act_on_bench(BenchCommand::SetHeadspace { text: text.to_owned() }),
            "batch.loss" => self.act_on_bench(BenchCommand::SetLoss { text: text.to_owned() }),
            "batch.density" => self.act_on_bench(BenchCommand::SetDensity { text: text.to_owned() }),
            field => self.set_own_field(field, text),
        }
    }

    /// So many units: the batch is then planned to fill them.
    fn set_units(&mut self, text: &str) -> Answer {
        let mark = self.mark();
        let read = read_plain(text, mark, Decimal::ONE, Decimal::from(MOST_CONTAINERS)).and_then(|count| {
            if count.fract().is_zero() { Ok(count) } else { Err(NumberError::NotWhole { value: count }) }
        });
        let result = read.map(|count| {
            self.change_formula("batch.count", Some("batch.count"), |formula| {
                formula.batch.way = BatchWay::Containers;
                formula.batch.containers.count = u32::try_from(count).unwrap_or(formula.batch.containers.count);
                let mut fields = LabelFields::read(&formula.costs);
                fields.set("basis", "plan");
                formula.costs = fields.write();
            });
        });
        about("batch.count", result, mark)
    }

    fn set_own_field(&mut self, field: &str, text: &str) -> Answer {
        let Some(name) = field.strip_prefix("cost.") else { return Answer::default() };
        let mark = self.mark();
        let kept = match takes(name) {
            Some(Takes::Choice(takes)) if text.is_empty() || takes(text) => text.to_owned(),
            Some(Takes::Choice(_)) | None => return Answer::default(),
            Some(Takes::Volume) => match read_volume(text, mark, self.settings.volume_unit) {
                Ok(volume) if volume.is_zero() => {
                    let (minimum, maximum) = (Decimal::ONE, Decimal::from(MOST_CONTAINERS));
                    return about(
                        field,
                        Err(NumberError::OutOfRange { value: volume.value(), minimum, maximum }),
                        mark,
                    );
                }
                Ok(volume) => volume.value().normalize().to_string(),
                Err(error) => return about(field, Err(error), mark),
            },
            Some(_) if text.is_empty() => String::new(),
            Some(Takes::Text) => text.chars().filter(|letter| !letter.is_control()).take(LONGEST_KIND_NAME).collect(),
            Some(Takes::Currency) => match Currency::new(&text.to_ascii_uppercase()) {
                Ok(currency) => currency.code().to_owned(),
                Err(error) => {
                    return Answer {
                        field: Some(field.to_owned()),
                        error: Some(says_materials::not_a_currency().to_owned()),
                        code: Some(error.code()),
                        made: None,
                    };
                }
            },
            Some(Takes::Number { most, whole }) => {
                let least = if whole { Decimal::ONE } else { Decimal::ZERO };
                match read_plain(text, mark, least, Decimal::from(most)) {
                    Ok(value) if whole && !value.is_integer() => {
                        return about(field, Err(NumberError::NotWhole { value }), mark);
                    }
                    // Written with a point whatever the mark: the maker may choose another one.
                    Ok(number) => number.normalize().to_string(),
                    Err(error) => return about(field, Err(error), mark),
                }
            }
        };
        let key = kept_name(name);
        if is_of_maker(name) {
            let mut after = (*self.settings).clone();
            let mut fields = LabelFields::read(&after.maker);
            fields.set(&key, &kept);
            after.maker = fields.write();
            self.commit_settings(after, field);
        } else {
            self.change_formula("cost.set", Some(field), |formula| {
                let mut fields = LabelFields::read(&formula.costs);
                fields.set(&key, &kept);
                formula.costs = fields.write();
            });
        }
        about(field, Ok(()), mark)
    }
}
