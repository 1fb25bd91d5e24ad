//! The body of version 1: a table of what is not in the catalogue, then the formula, own materials and other formulas.
//! Version 2 adds behind them, for each formula in the same order, its kind of product and its measured pH; version 3 beside
//! these what the author says to use instead of a line.

use super::bytes::{Packing, Unpacking, scale_of};
use super::text::{put_texts, take_texts};
use super::{LinkError, MOST_LINES, MOST_MATERIALS, MOST_PARTS, MOST_PHASES, MOST_STEPS, Part};
use crate::parcel::{Parcel, references_of_formula, references_of_material};
use crate::record::OwnMaterial;
use rust_decimal::Decimal;
use std::collections::BTreeSet;
use stillroom_core::batch_plan::{BatchPlan, BatchWay, Containers, Stock};
use stillroom_core::{
    Amount, Celsius, Class, Constituent, ConstituentId, Density, Formula, FormulaId, Grams, Line, LineId, Makeup,
    Material, MaterialId, Millilitres, Percent, Ph, Phase, PhaseId, PhaseKind, ProductKind, Purpose, SetAside,
    WrittenIn,
};

/// Classes by the number they have in a link. Only ever appended to.
const CLASSES: [Class; 26] = [
    Class::Water,
    Class::Humectant,
    Class::Solvent,
    Class::Thickener,
    Class::Oil,
    Class::Butter,
    Class::Emollient,
    Class::Wax,
    Class::FattyAlcohol,
    Class::FattyAcid,
    Class::Emulsifier,
    Class::Surfactant,
    Class::Active,
    Class::Extract,
    Class::Protein,
    Class::Preservative,
    Class::Chelator,
    Class::Antioxidant,
    Class::PhAdjuster,
    Class::Salt,
    Class::EssentialOil,
    Class::Fragrance,
    Class::Colourant,
    Class::Mineral,
    Class::Exfoliant,
    Class::Other,
];
/// Phase kinds by their number.
const KINDS: [PhaseKind; 4] =
    [PhaseKind::HeatedWater, PhaseKind::HeatedOil, PhaseKind::CoolDown, PhaseKind::RoomTemperature];
/// Ways to ask for a batch by their number.
const WAYS: [BatchWay; 3] = [BatchWay::Mass, BatchWay::Containers, BatchWay::Stock];

/// What a formula has, one bit each.
mod has {
    pub(super) const RINSE_OFF: u8 = 1;
    pub(super) const GRAMS: u8 = 1 << 1;
    pub(super) const PH: u8 = 1 << 2;
    pub(super) const STEPS: u8 = 1 << 3;
    pub(super) const NOTES: u8 = 1 << 4;
    pub(super) const BATCH: u8 = 1 << 5;
    /// Phases and lines are numbered from 0 in the order they stand.
    pub(super) const IN_ORDER: u8 = 1 << 6;
    pub(super) const SET_ASIDE: u8 = 1 << 7;
}

/// What an amount says, in the lowest two bits of its head; its scale stands in the highest four.
const PERCENT: u8 = 0;
const GRAMS: u8 = 1;
const QUANTUM_SATIS: u8 = 2;
/// Beside an amount: the line has a note.
const WITH_NOTE: u8 = 1 << 2;
/// Beside an amount: the line is a solid meant to stay one.
const SUSPENDED: u8 = 1 << 3;
/// A scale that does not fit four bits, or a sign: a decimal with a head of its own follows.
const WIDE: u8 = 15;

/// What a catalogue does not have, by the number it has in this link. The formula itself is number 0.
struct Table(Vec<MaterialId>);

pub(super) fn write(parcel: &Parcel) -> Result<Vec<u8>, LinkError> {
    let mut packing = Packing::default();
    let table = write_table(&mut packing, parcel)?;
    write_formula(&mut packing, &table, &parcel.formula)?;
    for own in &parcel.materials {
        write_material(&mut packing, &table, own)?;
    }
    for (_, formula) in &parcel.formulas {
        write_formula(&mut packing, &table, formula)?;
    }
    if least_version(parcel) > 1 {
        for formula in formulas_of(parcel) {
            write_more(&mut packing, formula)?;
        }
    }
    let mut bytes = Vec::new();
    super::bytes::put_whole(&mut bytes, packing.bytes.len() as u128);
    bytes.extend(packing.bytes);
    put_texts(&mut bytes, &packing.texts);
    Ok(bytes)
}

/// The earliest version that has a place for all that it says: the one it is written as.
pub(super) fn least_version(parcel: &Parcel) -> u8 {
    let of_formula = |formula: &Formula| {
        if formula.lines().any(|line| !line.substitution.is_empty()) {
            3
        } else if formula.kind.is_some() || formula.measured_ph.is_some() {
            2
        } else {
            1
        }
    };
    formulas_of(parcel).map(of_formula).max().unwrap_or(1)
}

fn formulas_of(parcel: &Parcel) -> impl Iterator<Item = &Formula> {
    std::iter::once(&parcel.formula).chain(parcel.formulas.iter().map(|(_, formula)| formula))
}

pub(super) fn read(bytes: &[u8], version: u8) -> Result<Parcel, LinkError> {
    let mut frame = Unpacking { bytes, texts: "" };
    let length = frame.whole()?;
    let numbers = frame.take(length)?;
    let texts = take_texts(frame.bytes)?;
    let mut unpacking = Unpacking { bytes: numbers, texts: &texts };
    let mut parcel = read_parcel(&mut unpacking)?;
    if version > 1 {
        read_more(&mut unpacking, &mut parcel.formula, version)?;
        for (_, formula) in &mut parcel.formulas {
            read_more(&mut unpacking, formula, version)?;
        }
        // It would have been written as an earlier version.
        if least_version(&parcel) != version {
            return Err(LinkError::Damaged);
        }
    }
    if unpacking.bytes.is_empty() && unpacking.texts.is_empty() { Ok(parcel) } else { Err(LinkError::Damaged) }
}

fn read_parcel(unpacking: &mut Unpacking) -> Result<Parcel, LinkError> {
    let id = unpacking.name()?;
    let materials = unpacking.count(MOST_MATERIALS, Part::Materials)?;
    let formulas = unpacking.count(MOST_MATERIALS, Part::Materials)?;
    let missing = unpacking.count(2 * MOST_MATERIALS, Part::Materials)?;
    let mut table = vec![MaterialId::Formula(id)];
    for _ in 0..materials {
        table.push(MaterialId::Own(unpacking.name()?));
    }
    for _ in 0..formulas {
        table.push(MaterialId::Formula(unpacking.name()?));
    }
    for _ in 0..missing {
        table.push(match unpacking.byte()? {
            0 => MaterialId::Own(unpacking.name()?),
            1 => MaterialId::Formula(unpacking.name()?),
            _ => return Err(LinkError::Damaged),
        });
    }
    if table.iter().collect::<BTreeSet<_>>().len() != table.len() {
        return Err(LinkError::Damaged);
    }
    let ids = table.clone();
    let table = Table(table);
    let formula = read_formula(unpacking, &table)?;
    let own = ids[1..=materials].iter().map(|id| read_material(unpacking, &table, *id));
    let own = own.collect::<Result<_, _>>()?;
    let others = ids[1 + materials..].iter().take(formulas).map(|id| match id {
        MaterialId::Formula(number) => Ok((FormulaId(*number), read_formula(unpacking, &table)?)),
        MaterialId::Own(_) | MaterialId::Catalogue(_) => Err(LinkError::Damaged),
    });
    let others = others.collect::<Result<_, _>>()?;
    Ok(Parcel { id: FormulaId(id), formula, materials: own, formulas: others })
}

fn write_table(packing: &mut Packing, parcel: &Parcel) -> Result<Table, LinkError> {
    let mut table = vec![parcel.id.as_material()];
    table.extend(parcel.materials.iter().map(|own| own.material.id));
    table.extend(parcel.formulas.iter().map(|(id, _)| id.as_material()));
    let mut met: BTreeSet<MaterialId> = table.iter().copied().collect();
    let own_alone = parcel.materials.iter().all(|own| matches!(own.material.id, MaterialId::Own(_)));
    if met.len() != table.len() || !own_alone {
        // No shelf holds two records under one name.
        return Err(LinkError::Damaged);
    }
    let included = table.len();
    let references = formulas_of(parcel)
        .flat_map(references_of_formula)
        .chain(parcel.materials.iter().flat_map(references_of_material));
    for reference in references {
        if !matches!(reference, MaterialId::Catalogue(_)) && met.insert(reference) {
            table.push(reference);
        }
    }
    packing.name(parcel.id.0);
    packing.count(parcel.materials.len(), MOST_MATERIALS, Part::Materials)?;
    packing.count(parcel.formulas.len(), MOST_MATERIALS, Part::Materials)?;
    packing.count(table.len() - included, 2 * MOST_MATERIALS, Part::Materials)?;
    for (at, id) in table.iter().enumerate().skip(1) {
        let (kind, number) = match id {
            MaterialId::Own(number) => (0, *number),
            MaterialId::Formula(number) => (1, *number),
            MaterialId::Catalogue(_) => return Err(LinkError::Damaged),
        };
        if at >= included {
            packing.byte(kind);
        }
        packing.name(number);
    }
    Ok(Table(table))
}

impl Table {
    fn number_of(&self, id: MaterialId) -> Result<u64, LinkError> {
        Ok(match id {
            MaterialId::Catalogue(number) => u64::from(number) << 1,
            _ => (self.0.iter().position(|each| *each == id).ok_or(LinkError::Damaged)? as u64) << 1 | 1,
        })
    }

    fn id_of(&self, number: u64) -> Result<MaterialId, LinkError> {
        let (number, own) = (number >> 1, number & 1 == 1);
        if own {
            let at = usize::try_from(number).map_err(|_| LinkError::Damaged)?;
            self.0.get(at).copied().ok_or(LinkError::Damaged)
        } else {
            u32::try_from(number).map(MaterialId::Catalogue).map_err(|_| LinkError::Damaged)
        }
    }

    fn write_constituent(&self, packing: &mut Packing, id: ConstituentId) -> Result<(), LinkError> {
        packing.whole(match id {
            ConstituentId::Catalogue(number) => u64::from(number) << 1,
            ConstituentId::Own(number) => self.number_of(MaterialId::Own(number))?,
        });
        Ok(())
    }

    fn read_constituent(&self, unpacking: &mut Unpacking) -> Result<ConstituentId, LinkError> {
        match self.id_of(unpacking.whole()?)? {
            MaterialId::Catalogue(number) => Ok(ConstituentId::Catalogue(number)),
            MaterialId::Own(number) => Ok(ConstituentId::Own(number)),
            MaterialId::Formula(_) => Err(LinkError::Damaged),
        }
    }
}

// ---- a formula ------------------------------------------------------------------------------------------------------

/// Whether phases and lines have the numbers they got when they were added one after the other.
fn is_in_order(formula: &Formula) -> bool {
    let mut next = 0;
    let mut is_next = |number: u32| {
        let is = number == next;
        next += 1;
        is
    };
    formula.phases.iter().all(|phase| is_next(phase.id.0) && phase.lines.iter().all(|line| is_next(line.id.0)))
        && formula.next_number == next
}

fn write_formula(packing: &mut Packing, table: &Table, formula: &Formula) -> Result<(), LinkError> {
    // Kind, measured pH and what to use instead of a line follow behind all formulas ([`write_more`]).
    let Formula { name, purpose, target_ph, written_in, phases, steps, notes, batch, set_aside, next_number, .. } =
        formula;
    let in_order = is_in_order(formula);
    let head = [
        (has::RINSE_OFF, *purpose == Purpose::RinseOff),
        (has::GRAMS, *written_in == WrittenIn::Grams),
        (has::PH, target_ph.is_some()),
        (has::STEPS, !steps.is_empty()),
        (has::NOTES, !notes.is_empty()),
        (has::BATCH, *batch != BatchPlan::default()),
        (has::IN_ORDER, in_order),
        (has::SET_ASIDE, !set_aside.is_empty()),
    ];
    packing.byte(bits(&head));
    packing.text(name)?;
    if let Some(ph) = target_ph {
        packing.decimal(ph.value());
    }
    packing.count(phases.len(), MOST_PHASES, Part::Phases)?;
    for phase in phases {
        write_phase(packing, table, phase, in_order)?;
    }
    if !in_order {
        packing.whole(*next_number);
    }
    if !steps.is_empty() {
        packing.count(steps.len(), MOST_STEPS, Part::Steps)?;
        for step in steps {
            packing.text(step)?;
        }
    }
    if !notes.is_empty() {
        packing.text(notes)?;
    }
    if *batch != BatchPlan::default() {
        write_batch(packing, table, batch)?;
    }
    if !set_aside.is_empty() {
        packing.count(set_aside.len(), MOST_STEPS, Part::Steps)?;
        for SetAside { code, subject, reason } in set_aside {
            packing.text(code)?;
            packing.text(subject)?;
            packing.text(reason)?;
        }
    }
    Ok(())
}

fn read_formula(unpacking: &mut Unpacking, table: &Table) -> Result<Formula, LinkError> {
    let head = unpacking.byte()?;
    let has = bits_of(head, u8::MAX)?;
    let name = unpacking.text()?;
    let target_ph = if has(has::PH) { Some(quantity(unpacking.decimal()?, Ph::new)?) } else { None };
    let count = unpacking.count(MOST_PHASES, Part::Phases)?;
    let mut next = has(has::IN_ORDER).then_some(0);
    let phases = (0..count).map(|_| read_phase(unpacking, table, &mut next)).collect::<Result<_, _>>()?;
    let next_number = match next {
        Some(next) => next,
        None => unpacking.whole()?,
    };
    let steps = if has(has::STEPS) { unpacking.count(MOST_STEPS, Part::Steps)? } else { 0 };
    let steps = (0..steps).map(|_| unpacking.text()).collect::<Result<_, _>>()?;
    let notes = if has(has::NOTES) { unpacking.text()? } else { String::new() };
    let batch = if has(has::BATCH) { read_batch(unpacking, table)? } else { BatchPlan::default() };
    let set_aside = if has(has::SET_ASIDE) { unpacking.count(MOST_STEPS, Part::Steps)? } else { 0 };
    let set_aside = (0..set_aside)
        .map(|_| Ok(SetAside { code: unpacking.text()?, subject: unpacking.text()?, reason: unpacking.text()? }))
        .collect::<Result<_, _>>()?;
    let purpose = if has(has::RINSE_OFF) { Purpose::RinseOff } else { Purpose::LeaveOn };
    let written_in = if has(has::GRAMS) { WrittenIn::Grams } else { WrittenIn::Percent };
    let (kind, measured_ph) = (None, None);
    // What stays on the device of whoever wrote it.
    let (label, costs, tags) = (String::new(), String::new(), String::new());
    Ok(Formula {
        name,
        purpose,
        kind,
        target_ph,
        measured_ph,
        written_in,
        phases,
        steps,
        notes,
        label,
        costs,
        tags,
        batch,
        set_aside,
        next_number,
    })
}

/// What versions 2 and 3 say of a formula, one bit each.
const MORE_KIND: u8 = 1;
const MORE_MEASURED: u8 = 1 << 1;
/// From version 3 on: how many lines say what to use instead, then for each the place of the line and the text.
const MORE_SUBSTITUTIONS: u8 = 1 << 2;

fn write_more(packing: &mut Packing, formula: &Formula) -> Result<(), LinkError> {
    let Formula { kind, measured_ph, .. } = formula;
    let substitutions: Vec<(usize, &Line)> =
        formula.lines().enumerate().filter(|(_, line)| !line.substitution.is_empty()).collect();
    packing.byte(bits(&[
        (MORE_KIND, kind.is_some()),
        (MORE_MEASURED, measured_ph.is_some()),
        (MORE_SUBSTITUTIONS, !substitutions.is_empty()),
    ]));
    if let Some(kind) = kind {
        packing.byte(position(&ProductKind::ALL, kind));
    }
    if let Some(ph) = measured_ph {
        packing.decimal(ph.value());
    }
    if !substitutions.is_empty() {
        packing.count(substitutions.len(), MOST_LINES * MOST_PHASES, Part::Lines)?;
        for (place, line) in substitutions {
            packing.whole(place as u64);
            packing.text(&line.substitution)?;
        }
    }
    Ok(())
}

fn read_more(unpacking: &mut Unpacking, formula: &mut Formula, version: u8) -> Result<(), LinkError> {
    let known = MORE_KIND | MORE_MEASURED | if version > 2 { MORE_SUBSTITUTIONS } else { 0 };
    let has = bits_of(unpacking.byte()?, known)?;
    if has(MORE_KIND) {
        let kind = *ProductKind::ALL.get(usize::from(unpacking.byte()?)).ok_or(LinkError::Damaged)?;
        if kind.purpose() != formula.purpose {
            return Err(LinkError::Damaged);
        }
        formula.kind = Some(kind);
    }
    if has(MORE_MEASURED) {
        formula.measured_ph = Some(quantity(unpacking.decimal()?, Ph::new)?);
    }
    if has(MORE_SUBSTITUTIONS) {
        let count = unpacking.count(MOST_LINES * MOST_PHASES, Part::Lines)?;
        let mut lines = formula.phases.iter_mut().flat_map(|phase| &mut phase.lines);
        let mut passed = 0;
        for _ in 0..count {
            let place: usize = unpacking.whole()?;
            // Places rise, and what says nothing is not written.
            let skipped = place.checked_sub(passed).ok_or(LinkError::Damaged)?;
            let line = lines.nth(skipped).ok_or(LinkError::Damaged)?;
            passed = place + 1;
            line.substitution = unpacking.text()?;
            if line.substitution.is_empty() {
                return Err(LinkError::Damaged);
            }
        }
        if count == 0 {
            return Err(LinkError::Damaged);
        }
    }
    Ok(())
}

/// Beside a phase's kind: it has a temperature.
const WITH_TEMPERATURE: u8 = 1 << 2;

fn write_phase(packing: &mut Packing, table: &Table, phase: &Phase, in_order: bool) -> Result<(), LinkError> {
    let Phase { id, name, kind, temperature, lines } = phase;
    packing.byte(position(&KINDS, kind) | if temperature.is_some() { WITH_TEMPERATURE } else { 0 });
    if !in_order {
        packing.whole(id.0);
    }
    if let Some(temperature) = temperature {
        packing.decimal(temperature.value());
    }
    packing.text(name)?;
    packing.count(lines.len(), MOST_LINES, Part::Lines)?;
    for Line { id, material, amount, note, suspended, substitution: _ } in lines {
        write_amount_head(packing, *amount, bits(&[(WITH_NOTE, !note.is_empty()), (SUSPENDED, *suspended)]));
        if !in_order {
            packing.whole(id.0);
        }
        packing.whole(table.number_of(*material)?);
        write_amount(packing, *amount);
        if !note.is_empty() {
            packing.text(note)?;
        }
    }
    Ok(())
}

/// The number a phase or line has: the next one, or one that is written.
fn number(unpacking: &mut Unpacking, next: &mut Option<u32>) -> Result<u32, LinkError> {
    match next {
        Some(next) => {
            *next += 1;
            Ok(*next - 1)
        }
        None => unpacking.whole(),
    }
}

fn read_phase(unpacking: &mut Unpacking, table: &Table, next: &mut Option<u32>) -> Result<Phase, LinkError> {
    let head = unpacking.byte()?;
    let kind = *KINDS.get(usize::from(head & !WITH_TEMPERATURE)).ok_or(LinkError::Damaged)?;
    let id = PhaseId(number(unpacking, next)?);
    let with_temperature = head & WITH_TEMPERATURE != 0;
    let temperature = if with_temperature { Some(quantity(unpacking.decimal()?, Celsius::new)?) } else { None };
    let name = unpacking.text()?;
    let count = unpacking.count(MOST_LINES, Part::Lines)?;
    let mut lines = Vec::new();
    for _ in 0..count {
        let head = AmountHead::read(unpacking, WITH_NOTE | SUSPENDED)?;
        let id = LineId(number(unpacking, next)?);
        let material = table.id_of(unpacking.whole()?)?;
        let amount = head.read_amount(unpacking)?;
        let note = if head.beside & WITH_NOTE == 0 { String::new() } else { unpacking.text()? };
        lines.push(Line { note, suspended: head.beside & SUSPENDED != 0, ..Line::new(id, material, amount) });
    }
    Ok(Phase { id, name, kind, temperature, lines })
}

// ---- amounts --------------------------------------------------------------------------------------------------------

fn is_wide(value: Decimal) -> bool {
    value.is_sign_negative() || scale_of(value) >= WIDE
}

/// Writes the byte before an amount; `beside` are bits of whatever has the amount.
fn write_amount_head(packing: &mut Packing, amount: Amount, beside: u8) {
    let scale = |value: Decimal| (if is_wide(value) { WIDE } else { scale_of(value) }) << 4;
    packing.byte(
        beside
            | match amount {
                Amount::Percent(percent) => PERCENT | scale(percent.value()),
                Amount::Grams(mass) => GRAMS | scale(mass.value()),
                Amount::QuantumSatis => QUANTUM_SATIS,
            },
    );
}

fn write_amount(packing: &mut Packing, amount: Amount) {
    let value = match amount {
        Amount::Percent(percent) => percent.value(),
        Amount::Grams(mass) => mass.value(),
        Amount::QuantumSatis => return,
    };
    if is_wide(value) { packing.decimal(value) } else { packing.digits(value) }
}

struct AmountHead {
    kind: u8,
    scale: u8,
    beside: u8,
}

impl AmountHead {
    fn read(unpacking: &mut Unpacking, known: u8) -> Result<Self, LinkError> {
        let head = unpacking.byte()?;
        let (kind, beside, scale) = (head & 0b11, head & 0b1100, head >> 4);
        if beside & !known != 0 || (kind == QUANTUM_SATIS && scale != 0) {
            return Err(LinkError::Damaged);
        }
        Ok(Self { kind, scale, beside })
    }

    fn read_amount(&self, unpacking: &mut Unpacking) -> Result<Amount, LinkError> {
        let mut value = || if self.scale == WIDE { unpacking.decimal() } else { unpacking.digits(self.scale, false) };
        match self.kind {
            PERCENT => Ok(Amount::Percent(quantity(value()?, Percent::new)?)),
            GRAMS => Ok(Amount::Grams(quantity(value()?, Grams::new)?)),
            QUANTUM_SATIS => Ok(Amount::QuantumSatis),
            _ => Err(LinkError::Damaged),
        }
    }
}

// ---- the batch ------------------------------------------------------------------------------------------------------

/// Beside the way: containers are not the usual ones, their density is known, something is at hand.
const WITH_CONTAINERS: u8 = 1 << 2;
const WITH_DENSITY: u8 = 1 << 3;
const WITH_STOCK: u8 = 1 << 4;

fn write_batch(packing: &mut Packing, table: &Table, batch: &BatchPlan) -> Result<(), LinkError> {
    let BatchPlan { way, mass, containers, stock } = batch;
    let usual = *containers == BatchPlan::default().containers;
    let head = [
        (WITH_CONTAINERS, !usual),
        (WITH_DENSITY, !usual && containers.density.is_some()),
        (WITH_STOCK, !stock.is_empty()),
    ];
    packing.byte(position(&WAYS, way) | bits(&head));
    packing.decimal(mass.value());
    if !usual {
        packing.whole(containers.count);
        packing.decimal(containers.volume.value());
        packing.decimal(containers.headspace.value());
        packing.decimal(containers.loss.value());
        if let Some(density) = containers.density {
            packing.decimal(density.value());
        }
    }
    if !stock.is_empty() {
        packing.count(stock.len(), MOST_STEPS, Part::Steps)?;
        for Stock { material, available } in stock {
            packing.whole(table.number_of(*material)?);
            packing.decimal(available.value());
        }
    }
    Ok(())
}

fn read_batch(unpacking: &mut Unpacking, table: &Table) -> Result<BatchPlan, LinkError> {
    let head = unpacking.byte()?;
    let way = *WAYS.get(usize::from(head & 0b11)).ok_or(LinkError::Damaged)?;
    let has = bits_of(head & !0b11, WITH_CONTAINERS | WITH_DENSITY | WITH_STOCK)?;
    let mass = quantity(unpacking.decimal()?, Grams::new)?;
    let mut containers = BatchPlan::default().containers;
    if has(WITH_CONTAINERS) {
        let count = unpacking.whole()?;
        let volume = quantity(unpacking.decimal()?, Millilitres::new)?;
        let headspace = quantity(unpacking.decimal()?, Percent::new)?;
        let loss = quantity(unpacking.decimal()?, Percent::new)?;
        let density = if has(WITH_DENSITY) { Some(quantity(unpacking.decimal()?, Density::new)?) } else { None };
        containers = Containers { count, volume, headspace, loss, density };
    } else if has(WITH_DENSITY) {
        return Err(LinkError::Damaged);
    }
    let stock = if has(WITH_STOCK) { unpacking.count(MOST_STEPS, Part::Steps)? } else { 0 };
    let stock = (0..stock)
        .map(|_| {
            let material = table.id_of(unpacking.whole()?)?;
            Ok(Stock { material, available: quantity(unpacking.decimal()?, Grams::new)? })
        })
        .collect::<Result<_, _>>()?;
    Ok(BatchPlan { way, mass, containers, stock })
}

// ---- own materials --------------------------------------------------------------------------------------------------

/// Beside the usual phase of an own material.
const OWN_DENSITY: u8 = 1 << 2;
const OWN_COMPOSITE: u8 = 1 << 3;
const OWN_CONSTITUENT: u8 = 1 << 4;
const OWN_NOTE: u8 = 1 << 5;

fn write_material(packing: &mut Packing, table: &Table, own: &OwnMaterial) -> Result<(), LinkError> {
    let OwnMaterial { material, constituent, note } = own;
    let head = [
        (OWN_DENSITY, material.density.is_some()),
        (OWN_COMPOSITE, matches!(material.makeup, Makeup::Composite(_))),
        (OWN_CONSTITUENT, constituent.is_some()),
        (OWN_NOTE, !note.is_empty()),
    ];
    packing.byte(position(&KINDS, &material.usual_phase) | bits(&head));
    packing.byte(position(&CLASSES, &material.class));
    packing.text(&material.name)?;
    if let Some(density) = material.density {
        packing.decimal(density.value());
    }
    match &material.makeup {
        Makeup::Simple(id) => table.write_constituent(packing, *id)?,
        Makeup::Composite(parts) => {
            packing.count(parts.len(), MOST_PARTS, Part::Parts)?;
            for part in parts {
                write_amount_head(packing, part.amount, 0);
                packing.whole(table.number_of(part.material)?);
                write_amount(packing, part.amount);
            }
        }
    }
    if let Some(Constituent { id, inci, class }) = constituent {
        table.write_constituent(packing, *id)?;
        packing.byte(position(&CLASSES, class));
        packing.text(inci)?;
    }
    if !note.is_empty() {
        packing.text(note)?;
    }
    Ok(())
}

fn read_material(unpacking: &mut Unpacking, table: &Table, id: MaterialId) -> Result<OwnMaterial, LinkError> {
    let head = unpacking.byte()?;
    let usual_phase = *KINDS.get(usize::from(head & 0b11)).ok_or(LinkError::Damaged)?;
    let has = bits_of(head & !0b11, OWN_DENSITY | OWN_COMPOSITE | OWN_CONSTITUENT | OWN_NOTE)?;
    let class = read_class(unpacking)?;
    let name = unpacking.text()?;
    let density = if has(OWN_DENSITY) { Some(quantity(unpacking.decimal()?, Density::new)?) } else { None };
    let makeup = if has(OWN_COMPOSITE) {
        let count = unpacking.count(MOST_PARTS, Part::Parts)?;
        let parts = (0..count).map(|_| {
            let head = AmountHead::read(unpacking, 0)?;
            let material = table.id_of(unpacking.whole()?)?;
            Ok(stillroom_core::Part { material, amount: head.read_amount(unpacking)? })
        });
        Makeup::Composite(parts.collect::<Result<_, _>>()?)
    } else {
        Makeup::Simple(table.read_constituent(unpacking)?)
    };
    let constituent = if has(OWN_CONSTITUENT) {
        let id = table.read_constituent(unpacking)?;
        let class = read_class(unpacking)?;
        Some(Constituent { id, inci: unpacking.text()?, class })
    } else {
        None
    };
    let note = if has(OWN_NOTE) { unpacking.text()? } else { String::new() };
    let material = Material { id, name, class, usual_phase, density, makeup };
    Ok(OwnMaterial { material, constituent, note })
}

fn read_class(unpacking: &mut Unpacking) -> Result<Class, LinkError> {
    CLASSES.get(usize::from(unpacking.byte()?)).copied().ok_or(LinkError::Damaged)
}

// ---- small things ---------------------------------------------------------------------------------------------------

fn quantity<T, E>(value: Decimal, new: impl FnOnce(Decimal) -> Result<T, E>) -> Result<T, LinkError> {
    new(value).map_err(|_| LinkError::Damaged)
}

/// Position in a short list, which always holds it.
fn position<T: PartialEq>(list: &[T], item: &T) -> u8 {
    list.iter().position(|each| each == item).and_then(|at| u8::try_from(at).ok()).unwrap_or(0)
}

fn bits(flags: &[(u8, bool)]) -> u8 {
    flags.iter().filter(|(_, set)| *set).fold(0, |bits, (bit, _)| bits | bit)
}

/// Which bits are set; one that is not known is damage.
fn bits_of(bits: u8, known: u8) -> Result<impl Fn(u8) -> bool, LinkError> {
    if bits & !known == 0 { Ok(move |bit| bits & bit != 0) } else { Err(LinkError::Damaged) }
}
