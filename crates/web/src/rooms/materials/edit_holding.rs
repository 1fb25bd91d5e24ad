//! What the maker has of materials, and tables of their own materials in and out.

use crate::contract::Answer;
use crate::messages::materials as says;
use crate::messages::names::word;
use crate::rooms::formula::edit::about;
use crate::rooms::materials::command::HoldingField;
use crate::rooms::materials::sentences as sentences_material;
use crate::rooms::materials::view::{SourceView, TableView};
use crate::session::Session;
use crate::session::history::Slot;
use litemap::LiteMap;
use rust_decimal::Decimal;
use std::rc::Rc;
use stillroom_core::balance::balance;
use stillroom_core::number::{NumberError, read_mass, read_plain};
use stillroom_core::{
    Amount, Constituent, ConstituentId, Currency, Density, LineId, Makeup, Material, MaterialId, MaterialSource, Money,
    Part, WrittenIn,
};
use stillroom_exchange::holding::{Holding, is_day};
use stillroom_exchange::record::OwnMaterial;
use stillroom_exchange::table::{MaterialRow, MaterialTable, TableProblem, read_materials, write_materials};

/// Currency of a price until the maker names another.
const USUAL_CURRENCY: &str = "EUR";
/// Highest price of a pack.
const HIGHEST_PRICE: Decimal = Decimal::from_parts(1_000_000, 0, 0, false, 0);

/// Why a text of a holding was not understood.
enum HoldingError {
    Number(NumberError),
    Currency,
    NoPrice,
    Day,
}

/// Materials of a table that was read and waits to be taken in.
#[derive(Default)]
struct ReadTable(Vec<OwnMaterial>);

impl Session {
    pub(crate) fn set_holding(&mut self, material: MaterialId, which: HoldingField, text: &str) -> Answer {
        if self.materials.material(material).is_none() {
            return Answer::default();
        }
        let field = format!("holding.{}", field_name(which));
        let before = self.materials.holding(material).map(Rc::clone);
        let mut after = before.as_deref().cloned().unwrap_or_default();
        let answer = match self.read_holding(which, text.trim(), &mut after) {
            Ok(()) => Answer { field: Some(field.clone()), ..Answer::default() },
            Err(HoldingError::Number(error)) => about(&field, Err(error), self.mark()),
            Err(HoldingError::Currency) => refusal(&field, "quantity.not-a-currency", says::not_a_currency()),
            Err(HoldingError::NoPrice) => refusal(&field, "holding.no-price", says::currency_without_price()),
            Err(HoldingError::Day) => refusal(&field, "holding.not-a-day", says::not_a_day()),
        };
        let prices = [HoldingField::Price, HoldingField::Currency, HoldingField::Pack, HoldingField::Shipping];
        if answer.error.is_none() && prices.contains(&which) {
            after.note_price(&self.around.today());
        }
        if answer.error.is_none() && before.as_deref() != Some(&after) {
            let after = (after != Holding::default()).then(|| Rc::new(after));
            if before != after {
                let slot = |holding| vec![Slot::Holding(material, holding)];
                self.commit("material.holding", Some(&field), self.open, slot(before), slot(after));
            }
        }
        answer
    }

    fn read_holding(&self, which: HoldingField, text: &str, holding: &mut Holding) -> Result<(), HoldingError> {
        let mark = self.mark();
        let mass = |text: &str| {
            if text.is_empty() {
                return Ok(None);
            }
            read_mass(text, mark, self.settings.mass_unit, holding.density).map(Some).map_err(HoldingError::Number)
        };
        match which {
            HoldingField::Price if text.is_empty() => holding.price = None,
            HoldingField::Price => {
                let amount = read_plain(text, mark, Decimal::ZERO, HIGHEST_PRICE).map_err(HoldingError::Number)?;
                let usual = Currency::new(USUAL_CURRENCY).map_err(|_| HoldingError::Currency)?;
                let currency = holding.price.map_or_else(|| self.last_currency().unwrap_or(usual), Money::currency);
                holding.price = Some(Money::new(amount, currency));
            }
            HoldingField::Currency => {
                let currency = Currency::new(&text.to_ascii_uppercase()).map_err(|_| HoldingError::Currency)?;
                // Without a price it would be one of nothing, and a price that is missing is never nothing.
                let amount = holding.price.map(Money::amount).ok_or(HoldingError::NoPrice)?;
                holding.price = Some(Money::new(amount, currency));
            }
            HoldingField::Pack => holding.pack = mass(text)?,
            HoldingField::Shipping if text.is_empty() => holding.shipping = None,
            HoldingField::Shipping => {
                let amount = read_plain(text, mark, Decimal::ZERO, HIGHEST_PRICE).map_err(HoldingError::Number)?;
                holding.shipping = Some(amount);
            }
            HoldingField::Stock => holding.stock = mass(text)?,
            HoldingField::Lot => text.clone_into(&mut holding.lot),
            HoldingField::Note => text.clone_into(&mut holding.note),
            HoldingField::Expiry if text.is_empty() || is_day(text) => text.clone_into(&mut holding.expiry),
            HoldingField::Expiry => return Err(HoldingError::Day),
            HoldingField::Density if text.is_empty() => holding.density = None,
            HoldingField::Density => {
                let value = read_plain(text, mark, Density::MINIMUM, Density::MAXIMUM).map_err(HoldingError::Number)?;
                holding.density = Density::new(value).ok();
            }
            HoldingField::Usual => text.clone_into(&mut holding.usual),
        }
        Ok(())
    }

    /// The currency the maker used elsewhere.
    fn last_currency(&self) -> Option<Currency> {
        self.materials.holdings().filter_map(|holding| holding.price).map(Money::currency).last()
    }

    /// Reads a table of materials; what can be taken in waits for the maker's word.
    pub fn read_table(&mut self, bytes: &[u8]) -> TableView {
        self.waiting.of::<ReadTable>().0.clear();
        let mark = self.mark();
        let mut table = match read_materials(bytes, mark) {
            Ok(table) => table,
            Err(error) => {
                return TableView { summary: sentences_material::table_error(&error), ..TableView::default() };
            }
        };
        let made = self.resolve_rows(&mut table);
        let problems: Vec<String> =
            table.problems.iter().map(|problem| sentences_material::line_problem(problem, mark)).collect();
        let ready = if problems.is_empty() { made.len() } else { 0 };
        if problems.is_empty() {
            self.waiting.of::<ReadTable>().0 = made;
        }
        TableView {
            summary: sentences_material::table_read(table.rows.len(), table.problems.len() + table.more_problems),
            problems,
            ready,
        }
    }

    /// Makes own materials of rows, finding parts by name among what is at hand and among the rows themselves.
    fn resolve_rows(&self, table: &mut MaterialTable) -> Vec<OwnMaterial> {
        let mut by_name: LiteMap<String, MaterialId> = LiteMap::new();
        let catalogue = self.materials.catalogue();
        for material in catalogue.materials() {
            by_name.insert(material.name.to_lowercase(), material.id);
        }
        for (_, own) in self.materials.own() {
            by_name.insert(own.material.name.to_lowercase(), own.material.id);
        }
        let numbers: Vec<u64> = table.rows.iter().map(|_| self.around.random()).collect();
        for (row, number) in table.rows.iter().zip(&numbers) {
            by_name.insert(row.name.to_lowercase(), MaterialId::Own(*number));
        }
        let rows = core::mem::take(&mut table.rows);
        let made =
            rows.iter().zip(&numbers).map(|(row, number)| self.make_of_row(row, *number, &by_name, table)).collect();
        table.rows = rows;
        made
    }

    fn make_of_row(
        &self,
        row: &MaterialRow,
        number: u64,
        by_name: &LiteMap<String, MaterialId>,
        table: &mut MaterialTable,
    ) -> OwnMaterial {
        let known = self.materials.catalogue().constituents().find(|each| each.inci.eq_ignore_ascii_case(&row.inci));
        let mut constituent = None;
        let makeup = if row.parts.is_empty() {
            Makeup::Simple(known.map_or_else(
                || {
                    let id = ConstituentId::Own(number);
                    constituent = Some(Constituent { id, inci: row.inci.clone(), class: row.class });
                    id
                },
                |known| known.id,
            ))
        } else {
            let parts: Vec<Part> = row
                .parts
                .iter()
                .filter_map(|(amount, name)| {
                    let material = by_name.get(&name.to_lowercase()).copied();
                    if material.is_none() {
                        table.note(row.line, "parts", TableProblem::UnknownMaterial { name: name.clone() });
                    }
                    Some(Part { material: material?, amount: *amount })
                })
                .collect();
            let amounts: Vec<(LineId, Amount)> =
                (0u32..).map(LineId).zip(row.parts.iter().map(|(amount, _)| *amount)).collect();
            if !balance(&amounts, WrittenIn::Percent).is_sound() {
                table.note(row.line, "parts", TableProblem::PartsOutOfBalance);
            }
            Makeup::Composite(parts)
        };
        let material = Material {
            id: MaterialId::Own(number),
            name: row.name.clone(),
            class: row.class,
            usual_phase: row.phase,
            density: row.density,
            makeup,
        };
        OwnMaterial { material, constituent, note: row.note.clone() }
    }

    /// Takes in the materials that wait, as one act.
    pub(crate) fn import_table(&mut self) -> Answer {
        let waiting = core::mem::take(&mut self.waiting.of::<ReadTable>().0);
        let numbered: Vec<(u64, OwnMaterial)> = waiting
            .into_iter()
            .filter_map(|own| match own.material.id {
                MaterialId::Own(number) => Some((number, own)),
                MaterialId::Catalogue(_) | MaterialId::Formula(_) => None,
            })
            .collect();
        if numbered.is_empty() {
            return Answer::default();
        }
        let count = numbered.len();
        let before = numbered.iter().map(|(number, _)| Slot::Material(*number, None)).collect();
        let after = numbered.into_iter().map(|(number, own)| Slot::Material(number, Some(Rc::new(own)))).collect();
        self.commit("material.import", None, self.open, before, after);
        self.notice("material.imported", says::materials_imported(count), true);
        Answer::default()
    }

    /// The maker's own materials as a table for a spreadsheet.
    #[must_use]
    pub fn write_table(&self) -> String {
        let rows: Vec<MaterialRow> = self
            .materials
            .own()
            .map(|(_, own)| {
                let material = &own.material;
                let (inci, parts) = match &material.makeup {
                    Makeup::Simple(constituent) => (self.materials.inci(*constituent).to_owned(), Vec::new()),
                    Makeup::Composite(parts) => (
                        String::new(),
                        parts.iter().map(|part| (part.amount, self.materials.name(part.material))).collect(),
                    ),
                };
                MaterialRow {
                    line: 0,
                    name: material.name.clone(),
                    inci,
                    class: material.class,
                    phase: material.usual_phase,
                    density: material.density,
                    parts,
                    note: own.note.clone(),
                }
            })
            .collect();
        write_materials(&rows, self.mark())
    }

    /// Every source a value of the catalogue rests on.
    #[must_use]
    pub fn sources(&self) -> Vec<SourceView> {
        let mut sources: Vec<SourceView> = self
            .materials
            .catalogue()
            .sources()
            .map(|source| SourceView {
                citation: word(source.citation).to_owned(),
                about: sentences_material::about_source(source.kind, source.as_of),
            })
            .collect();
        sources.sort_by_key(|source| source.citation.to_lowercase());
        sources
    }
}

fn refusal(field: &str, code: &'static str, error: &str) -> Answer {
    Answer { field: Some(field.to_owned()), error: Some(error.to_owned()), code: Some(code), made: None }
}

const fn field_name(which: HoldingField) -> &'static str {
    match which {
        HoldingField::Price => "price",
        HoldingField::Currency => "currency",
        HoldingField::Pack => "pack",
        HoldingField::Shipping => "shipping",
        HoldingField::Stock => "stock",
        HoldingField::Lot => "lot",
        HoldingField::Expiry => "expiry",
        HoldingField::Density => "density",
        HoldingField::Usual => "usual",
        HoldingField::Note => "note",
    }
}
