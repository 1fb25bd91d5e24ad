/* tslint:disable */
/* eslint-disable */

export type Example = "gel-cream" | "balm" | "toner" | "cleansing-gel";
export type ExtractKind = "glycerite" | "solution" | "alcohol";
export type ExtractOffer = "shelve" | "use" | "solve" | "adjust" | "evaporated" | "verify" | "blend";
export type PhOffer = "set" | "buffer" | "neutralise";
export type SwapUse = "line" | "shelf" | "expiring" | "cheapest" | "figure";
export type PhaseKind = "heated-water" | "heated-oil" | "cool-down" | "room-temperature";
export type Layer = "water" | "humectants" | "thickeners" | "oils" | "solids" | "emulsifiers" | "surfactants" | "actives" | "preservatives" | "fragrance" | "minerals" | "helpers";
export type Class = "water" | "humectant" | "solvent" | "thickener" | "oil" | "butter" | "emollient" | "wax" | "fatty-alcohol" | "fatty-acid" | "emulsifier" | "surfactant" | "active" | "extract" | "protein" | "preservative" | "chelator" | "antioxidant" | "ph-adjuster" | "salt" | "essential-oil" | "fragrance" | "colourant" | "mineral" | "exfoliant" | "other";


/**
 * A QR code.
 */
export interface CodeView {
    /**
     * Modules along a side, with the empty margin of four around it.
     */
    side: number;
    /**
     * Its dark modules as the path of a drawing in modules.
     */
    path: string;
    /**
     * How wide it has to be on paper, in a sentence.
     */
    about: string;
    /**
     * That width in millimetres.
     */
    millimetres: number;
}

/**
 * A backup that was read and waits to be put on this device.
 */
export interface BackupView {
    /**
     * Why it cannot be read, in a sentence.
     */
    error?: string;
    /**
     * Stable code of the error.
     */
    code?: string;
    /**
     * What it holds, in a sentence.
     */
    summary: string;
    /**
     * Its records.
     */
    items: BackupItem[];
    /**
     * How many photos it holds, in a sentence; empty if none.
     */
    photos: string;
    /**
     * Names of its photos that are not on this device.
     */
    newPhotos: string[];
}

/**
 * A code, and where it stands.
 */
export interface LabelCodeView {
    /**
     * Left end of its empty edge.
     */
    x: number;
    /**
     * Upper end of its empty edge.
     */
    y: number;
    /**
     * How wide and high it is with its empty edge.
     */
    side: number;
    /**
     * Modules along a side, those of the empty edge among them.
     */
    modules: number;
    /**
     * Its dark modules as the path of a drawing in modules.
     */
    path: string;
}

/**
 * A column of a table.
 */
export interface RecipeColumnView {
    /**
     * Its place, counted from 0.
     */
    place: number;
    /**
     * What stands above it, or its number.
     */
    name: string;
    /**
     * The first of what stands in it.
     */
    sample: string;
    /**
     * What it holds.
     */
    holds: "name" | "percent" | "grams" | "amount" | "unit" | "phase" | "inci" | "note" | "price" | "left-out";
}

/**
 * A curve with its points. Places are in percent of its width and height, from the top left.
 */
export interface CurveView {
    /**
     * The curve in words.
     */
    description: string;
    /**
     * The curve.
     */
    line: [number, number][];
    /**
     * What was read.
     */
    points: [number, number][];
    /**
     * A height that matters, and what it is.
     */
    level: number;
    /**
     * What that height is.
     */
    levelLabel: string;
    /**
     * From where to where along the width the curve meets that height.
     */
    band: [number, number] | undefined;
    /**
     * Marks along the width.
     */
    across: CurveTick[];
    /**
     * Marks along the height.
     */
    up: CurveTick[];
}

/**
 * A day on which to look.
 */
export interface DueView {
    /**
     * Which day.
     */
    label: string;
    /**
     * The date.
     */
    date: string;
    /**
     * Where it stands, in words.
     */
    about: string;
    /**
     * The same: `seen`, `to-come`, `due` or `overdue`.
     */
    state: "seen" | "to-come" | "due" | "overdue";
    /**
     * The day as a record writes it.
     */
    day: string;
}

/**
 * A field of a card.
 */
export interface CardField {
    /**
     * Names it; what is wrong with its text comes back under this name.
     */
    field: string;
    /**
     * What it is called.
     */
    label: string;
    /**
     * Unit behind it.
     */
    unit: string;
    /**
     * What it holds.
     */
    text: string;
    /**
     * What it would be if nothing is typed.
     */
    placeholder: string;
    /**
     * What is typed: `decimal`, `numeric`, `text`, `long` or `day`.
     */
    keyboard: "decimal" | "numeric" | "text" | "long" | "day";
    /**
     * Whether it goes along with the large area; if not, it has a button of its own, or is sent when it is left.
     */
    withNext: boolean;
    /**
     * What its own button says; empty where it is sent when it is left.
     */
    button: string;
    /**
     * What is sent, where it does not go along with the large area.
     */
    command?: BatchesCommand;
    /**
     * Under which name its text goes into what is sent.
     */
    key: "text" | "gross" | "empty" | "count" | "each";
}

/**
 * A field of the costs.
 */
export interface CostFieldView {
    /**
     * Its name.
     */
    field: string;
    /**
     * Where it stands: how much is made, its containers, the work, the list of what to buy.
     */
    group: "batch" | "container" | "kind" | "work" | "buy";
    /**
     * How it is filled in.
     */
    kind: "choice" | "number" | "line";
    /**
     * What it is called.
     */
    label: string;
    /**
     * Unit behind it; may be empty.
     */
    unit: string;
    /**
     * What it holds: a text, or the key of what is chosen.
     */
    text: string;
    /**
     * What can be chosen.
     */
    choices: ChoiceView[];
}

/**
 * A field of the label.
 */
export interface LabelFieldView {
    /**
     * Its name.
     */
    field: string;
    /**
     * Where it stands: what is made, who makes it, the address on it, how it is printed, what is fine matter.
     */
    group: "product" | "maker" | "link" | "print" | "nano";
    /**
     * How it is filled in: a choice, a number, a line or several lines of text.
     */
    kind: "choice" | "number" | "line" | "lines";
    /**
     * What it is called.
     */
    label: string;
    /**
     * Unit behind it; may be empty.
     */
    unit: string;
    /**
     * What it holds: a text, or the key of what is chosen.
     */
    text: string;
    /**
     * What can be chosen.
     */
    choices: ChoiceView[];
}

/**
 * A field, or a choice where there are choices.
 */
export interface PhFieldView {
    /**
     * Its name.
     */
    field: string;
    /**
     * What it is called.
     */
    label: string;
    /**
     * Unit behind it; may be empty.
     */
    unit: string;
    /**
     * What it holds: a text, or the key of what is chosen.
     */
    text: string;
    /**
     * What can be chosen; empty where it is typed.
     */
    choices: ChoiceView[];
}

/**
 * A figure and how it was come by.
 */
export interface FigureView {
    /**
     * What it is.
     */
    label: string;
    /**
     * The figure; empty where there is none.
     */
    value: string;
    /**
     * Its range, or why there is no figure.
     */
    range: string;
    /**
     * Arithmetic or equation.
     */
    how: string;
    /**
     * Where that was published.
     */
    source: string;
}

/**
 * A finding set aside.
 */
export interface SetAsideView {
    /**
     * Names it.
     */
    key: string;
    /**
     * Its sentence; empty while it is not found.
     */
    text: string;
    /**
     * Why it was set aside.
     */
    reason: string;
}

/**
 * A formula as a link.
 */
export interface LinkView {
    /**
     * Why there is none, in a sentence.
     */
    error?: string;
    /**
     * Name of the formula.
     */
    name: string;
    /**
     * The whole address.
     */
    address: string;
    /**
     * What stands behind `#` in it.
     */
    fragment: string;
    /**
     * How long it is, in a sentence.
     */
    about: string;
    /**
     * What of it is for its maker alone, and whether it is in the link; empty where there is nothing of the kind.
     */
    keptBack: string;
    /**
     * The same as a picture.
     */
    code?: CodeView;
    /**
     * Why there is no picture, in a sentence.
     */
    codeProblem: string;
}

/**
 * A further kind of container.
 */
export interface CostKindView {
    /**
     * Its key.
     */
    key: string;
    /**
     * What it is called.
     */
    name: string;
    /**
     * What can be filled in of it.
     */
    fields: CostFieldView[];
}

/**
 * A label drawn, in millimetres from its upper left corner.
 */
export interface LabelArtView {
    /**
     * Its outline.
     */
    shape: "flat" | "wrap" | "round";
    /**
     * How wide it is.
     */
    width: number;
    /**
     * How high.
     */
    height: number;
    /**
     * In a sentence, for those who do not see it.
     */
    description: string;
    /**
     * Its lines of text.
     */
    runs: LabelRunView[];
    /**
     * The open jar of the period after opening.
     */
    openJar?: LabelJarView;
    /**
     * The code of an address.
     */
    code?: LabelCodeView;
}

/**
 * A layer of a bar, in shares of its length.
 */
export interface BandView {
    /**
     * Which.
     */
    layer: Layer;
    /**
     * Where it begins.
     */
    from: number;
    /**
     * How long it is.
     */
    length: number;
}

/**
 * A line a reader lacks, with what can be done.
 */
export interface WithoutView {
    /**
     * Which.
     */
    line: number;
    /**
     * What is weighed in it.
     */
    name: string;
    /**
     * What its author says to take instead; may be empty.
     */
    note: string;
    /**
     * What was worked out.
     */
    ways: SwapWayView[];
    /**
     * What is said where nothing was.
     */
    problem: string;
}

/**
 * A line a reader lacks.
 */
export interface Lack {
    /**
     * Which.
     */
    line?: number;
    /**
     * What to take instead, by the key of a way; the first that holds without one.
     */
    way?: string | undefined;
}

/**
 * A line across.
 */
export interface PlotLine {
    /**
     * Whether it runs along the picture at a height; otherwise it stands upright.
     */
    level: boolean;
    /**
     * Where.
     */
    at: number;
    /**
     * What it is.
     */
    label: string;
}

/**
 * A line meant to stay solid.
 */
export interface SuspendedView {
    /**
     * The line.
     */
    line: number;
    /**
     * What is weighed in it.
     */
    name: string;
}

/**
 * A line of the formula, to choose or to mark.
 */
export interface SwapLineView {
    /**
     * Which.
     */
    line: number;
    /**
     * What is weighed in it.
     */
    name: string;
    /**
     * Its percent.
     */
    percent: string;
    /**
     * Whether it is the chosen one, is missing, or may vary.
     */
    marked: boolean;
    /**
     * What there is of it.
     */
    remark: string;
}

/**
 * A line that names a material.
 */
export interface RecipeLineView {
    /**
     * Its place among the materials of the recipe.
     */
    key: number;
    /**
     * As it is written.
     */
    raw: string;
    /**
     * The name it gives.
     */
    written: string;
    /**
     * What the material is called; empty where none is chosen.
     */
    name: string;
    /**
     * Its percent; empty where none can be given.
     */
    percent: string;
    /**
     * Layer of the jar it belongs to.
     */
    layer: Layer;
    /**
     * What has to be looked at, in a sentence; may be empty.
     */
    remark: string;
    /**
     * Which materials it may mean, the likeliest first.
     */
    choices: RecipeChoiceView[];
    /**
     * The chosen one of them, `own` for a material of the maker's own, empty where nothing is chosen.
     */
    chosen: string;
}

/**
 * A line that names no material.
 */
export interface RecipeOtherView {
    /**
     * As it is written.
     */
    raw: string;
    /**
     * What it was taken for.
     */
    takenFor: string;
}

/**
 * A mark along an axis.
 */
export interface TickView {
    /**
     * Where.
     */
    at: number;
    /**
     * Its number.
     */
    text: string;
}

/**
 * A mark of a curve.
 */
export interface CurveTick {
    /**
     * Its place.
     */
    at: number;
    /**
     * What stands beside it.
     */
    label: string;
}

/**
 * A mark of the scale.
 */
export interface MarkView {
    /**
     * Its place.
     */
    at: number;
    /**
     * What stands beside it.
     */
    label: string;
    /**
     * Whether the low-risk criterion of ISO 29621 stands here.
     */
    criterion: boolean;
}

/**
 * A material that a line may mean.
 */
export interface RecipeChoiceView {
    /**
     * The material.
     */
    id: string;
    /**
     * What it is called.
     */
    name: string;
}

/**
 * A material that is needed.
 */
export interface CostBuyView {
    /**
     * The material.
     */
    material: string;
    /**
     * Its name.
     */
    name: string;
    /**
     * What is needed and what is there, in a sentence.
     */
    about: string;
    /**
     * Packs to buy, and what is left of them.
     */
    packs: string;
    /**
     * What they cost; may be empty.
     */
    cost: string;
    /**
     * Whether something of it has to be bought.
     */
    lacking: boolean;
    /**
     * What its fields hold.
     */
    holding: HoldingView;
}

/**
 * A material that may run short.
 */
export interface AtHandView {
    /**
     * The material.
     */
    material: string;
    /**
     * Its name.
     */
    name: string;
    /**
     * How much is there by the maker's own record; empty where nothing is recorded.
     */
    recorded: string;
}

/**
 * A name in the list of ingredients.
 */
export interface LabelNameView {
    /**
     * As the label writes it.
     */
    name: string;
    /**
     * How much of it there is.
     */
    percent: string;
    /**
     * Where it stands: by weight, in any order behind those, among the colourants.
     */
    place: "weight" | "any" | "colour";
    /**
     * Whether its place is not certain.
     */
    doubtful: boolean;
}

/**
 * A paragraph, a list, a table, a link, lines to copy or a code.
 */
export interface PostBlockView {
    /**
     * Which of these it is.
     */
    kind: "text" | "list" | "steps" | "table" | "link" | "snippet" | "code";
    /**
     * Its text; of a link what is pressed, of a table what it is of, of a code what it opens.
     */
    text: string;
    /**
     * Of a link, where it leads.
     */
    address: string;
    /**
     * The items of a list, and steps.
     */
    items: PostItemView[];
    /**
     * Heads of the columns of a table.
     */
    heads: string[];
    /**
     * The rows of a table.
     */
    rows: PostRowView[];
    /**
     * The code.
     */
    code?: CodeView;
}

/**
 * A part of the post as it is read.
 */
export interface PostSectionView {
    /**
     * Its word.
     */
    part: string;
    /**
     * Its heading.
     */
    title: string;
    /**
     * What stands below.
     */
    blocks: PostBlockView[];
}

/**
 * A part of the post, to be left out or taken in.
 */
export interface PostPartView {
    /**
     * The field that leaves it out.
     */
    field: string;
    /**
     * What it is called.
     */
    label: string;
    /**
     * What there is to know of it; may be empty.
     */
    about: string;
    /**
     * Whether it is in.
     */
    there: boolean;
    /**
     * Whether it stays in whatever one wants.
     */
    fixed: boolean;
}

/**
 * A phase of the formula to be.
 */
export interface RecipePhaseView {
    /**
     * Its name.
     */
    name: string;
    /**
     * How it is handled, in words; empty where the name says it.
     */
    about: string;
    /**
     * Its lines.
     */
    lines: RecipeLineView[];
}

/**
 * A picture with several curves. Places are in shares of its width and height from the lower left.
 */
export interface PlotView {
    /**
     * Names it.
     */
    plot: "added" | "species" | "acts";
    /**
     * What it shows.
     */
    title: string;
    /**
     * The picture in words, for those who do not see it.
     */
    description: string;
    /**
     * What runs along.
     */
    across: string;
    /**
     * What runs up.
     */
    up: string;
    /**
     * Marks along.
     */
    acrossTicks: TickView[];
    /**
     * Marks up.
     */
    upTicks: TickView[];
    /**
     * The curves.
     */
    curves: PlotCurve[];
    /**
     * Ranges to be in.
     */
    bands: PlotBand[];
    /**
     * Lines across the picture.
     */
    lines: PlotLine[];
    /**
     * What was measured.
     */
    points: [number, number][];
}

/**
 * A picture, in shares of its width and height from the lower left.
 */
export interface ChartView {
    /**
     * The picture in a sentence, for those who do not see it.
     */
    description: string;
    /**
     * What the first axis measures.
     */
    across: string;
    /**
     * What the second axis measures; empty where there is none.
     */
    up: string;
    /**
     * Marks along the first axis.
     */
    acrossTicks: TickView[];
    /**
     * Marks along the second axis.
     */
    upTicks: TickView[];
    /**
     * The curve.
     */
    curve: [number, number][];
    /**
     * Where on the first axis it is as it should be.
     */
    band?: [number, number];
    /**
     * Points and lines to look at.
     */
    marks: MarkView[];
}

/**
 * A point, or a line across.
 */
export interface MarkView {
    /**
     * Along the first axis.
     */
    x: number;
    /**
     * Along the second axis; absent for a line across the picture.
     */
    y?: number;
    /**
     * What it is.
     */
    text: string;
}

/**
 * A problem and its cures.
 */
export interface ProblemView {
    /**
     * Stable code.
     */
    code: string;
    /**
     * In a sentence.
     */
    text: string;
    /**
     * What would remove it, computed.
     */
    cures: string[];
}

/**
 * A range.
 */
export interface PlotBand {
    /**
     * Whether it runs along the picture, between two heights; otherwise it stands upright.
     */
    level: boolean;
    /**
     * From where.
     */
    from: number;
    /**
     * To where.
     */
    to: number;
    /**
     * What it is.
     */
    label: string;
}

/**
 * A recipe that was read. Nothing of it is kept yet.
 */
export interface RecipeView {
    /**
     * Why it was not read at all.
     */
    error?: string;
    /**
     * Name of the formula to be.
     */
    name: string;
    /**
     * How many of its lines are found, in a sentence; empty without any.
     */
    summary: string;
    /**
     * How many are to be chosen, in a sentence; empty where none is.
     */
    toChoose: string;
    /**
     * Sum of the percents.
     */
    total: string;
    /**
     * What the whole weighs; empty where nothing says so.
     */
    size: string;
    /**
     * What numbers without a unit are taken for.
     */
    meaning: "percent" | "grams" | "parts";
    /**
     * Whether any number has no unit, so that this can be asked.
     */
    hasBare: boolean;
    /**
     * Lines of which somebody has to say what they mean.
     */
    asked: RecipeLineView[];
    /**
     * Phases with the lines that are plain.
     */
    phases: RecipePhaseView[];
    /**
     * Lines that name no material, with what they were taken for.
     */
    others: RecipeOtherView[];
    /**
     * What becomes of lines left open, in a sentence; empty where none is.
     */
    leftOpen: string;
    /**
     * Whether it can be made a formula.
     */
    ready: boolean;
    /**
     * The columns of the table it is; none where it is none.
     */
    columns: RecipeColumnView[];
    /**
     * What of a table does not get into the formula, in sentences.
     */
    leftOut: string[];
}

/**
 * A row of a table.
 */
export interface PostRowView {
    /**
     * A line, the head of a phase, or the total.
     */
    kind: "line" | "phase" | "total";
    /**
     * Its cells; of a head one.
     */
    cells: string[];
}

/**
 * A row of the bibliography.
 */
export interface SourceView {
    /**
     * Citation.
     */
    citation: string;
    /**
     * What it is, and to which day it was valid.
     */
    about: string;
}

/**
 * A sentence of the label.
 */
export interface LabelStatementView {
    /**
     * The field that leaves it off.
     */
    field: string;
    /**
     * The sentence.
     */
    text: string;
    /**
     * What asks for it.
     */
    why: string;
    /**
     * Whether it stands on the label.
     */
    there: boolean;
}

/**
 * A sentence with a tone.
 */
export interface RemarkView {
    /**
     * Tone.
     */
    tone: "stop" | "caution" | "note";
    /**
     * The sentence.
     */
    text: string;
}

/**
 * A shared formula as a reader can make it. Nothing of it is kept.
 */
export interface ReaderView {
    /**
     * The formula with what is taken instead.
     */
    reading: ReadingView;
    /**
     * Whose version it is, in a sentence; empty while it is the author's.
     */
    whose: string;
    /**
     * Line by line what is lacking.
     */
    without: WithoutView[];
    /**
     * What the checks find in this version and not in the author's.
     */
    new: RemarkView[];
}

/**
 * A shared formula, for reading: nothing of it is kept.
 */
export interface ReadingView {
    /**
     * Why the link cannot be read, in a sentence.
     */
    error?: string;
    /**
     * Stable code of the error.
     */
    code?: string;
    /**
     * The formula worked out: head, lines, jar, constituents, batch. A batch that is not understood is its answer.
     */
    update: Update;
    /**
     * The method, a step each.
     */
    steps: string[];
    /**
     * Use, pH and size in a few words.
     */
    about: string;
    /**
     * Own materials that come along, each in a sentence.
     */
    materials: string[];
    /**
     * How it stands to what this device keeps.
     */
    standing: Standing;
    /**
     * What is different in the version this device keeps, if there is another one.
     */
    comparison?: ComparisonView;
}

/**
 * A source and how far to trust it.
 */
export interface FindingSource {
    /**
     * The citation.
     */
    text: string;
    /**
     * How far to trust it.
     */
    basis: string;
}

/**
 * A table of materials that was read.
 */
export interface TableView {
    /**
     * What was read, in a sentence.
     */
    summary: string;
    /**
     * What is wrong, line by line, in sentences.
     */
    problems: string[];
    /**
     * How many materials can be taken in; none if anything is wrong.
     */
    ready: number;
}

/**
 * A table of prices that was read.
 */
export interface PricesView {
    /**
     * What was read, in a sentence.
     */
    summary: string;
    /**
     * What is wrong, line by line, in sentences.
     */
    problems: string[];
    /**
     * What would change, a sentence a material.
     */
    changes: string[];
    /**
     * How many materials would change; none if anything is wrong.
     */
    ready: number;
}

/**
 * A timer.
 */
export interface TimerView {
    /**
     * Its step.
     */
    step: string;
    /**
     * Whether it runs.
     */
    running: boolean;
    /**
     * What is left to its next stop, as a clock shows it.
     */
    clock: string;
    /**
     * How much of the whole has run, in percent.
     */
    share: number;
    /**
     * What is to be done at that stop.
     */
    atStop: string;
    /**
     * Whether it has run to its end.
     */
    over: boolean;
    /**
     * Whether it stands at a pause.
     */
    atPause: boolean;
}

/**
 * An allergen that is in the product.
 */
export interface LabelAllergenView {
    /**
     * Its name in the law.
     */
    name: string;
    /**
     * How much of it there usually is, and at most.
     */
    amount: string;
    /**
     * What is done with it on this label.
     */
    fate: string;
    /**
     * Whether it is named.
     */
    named: boolean;
}

/**
 * An earlier version of a formula.
 */
export interface VersionView {
    /**
     * Names it among the versions of its formula: when it was last changed.
     */
    version: string;
    /**
     * When, and what it was called, in a few words.
     */
    text: string;
    /**
     * Whether it is another formula on the shelf, to compare with.
     */
    isOther: boolean;
}

/**
 * An item of a list.
 */
export interface PostItemView {
    /**
     * What stands before it in bold; may be empty.
     */
    lead: string;
    /**
     * Its text.
     */
    text: string;
}

/**
 * Containers to buy.
 */
export interface CostPiecesView {
    /**
     * What they are called.
     */
    name: string;
    /**
     * How many.
     */
    about: string;
    /**
     * What they cost, or that no price is known.
     */
    cost: string;
}

/**
 * Everything the checks found in the open formula.
 */
export interface FindingsView {
    /**
     * Whether the amounts make no whole yet, so that nothing is checked; what was found before may stay in sight.
     */
    waiting: boolean;
    /**
     * How many of each, in a sentence.
     */
    summary: string;
    /**
     * The most serious: `stop`, `caution`, `note`, or empty.
     */
    worst: string;
    /**
     * The findings, most serious first.
     */
    items: FindingView[];
    /**
     * Findings set aside.
     */
    setAside: SetAsideView[];
    /**
     * Lines meant to stay solid.
     */
    suspended: SuspendedView[];
    /**
     * Word of the kind of product; empty where it is not stated.
     */
    kind: string;
    /**
     * Measured pH, as the field holds it.
     */
    measuredPh: string;
    /**
     * Temperature of cold storage, as the field holds it.
     */
    coldStorage: string;
}

/**
 * Head, phases and problems of the open formula.
 */
export interface FormulaView {
    /**
     * Names it; absent when no formula is open.
     */
    id?: string;
    /**
     * What the maker calls it.
     */
    name: string;
    /**
     * How the product is used.
     */
    purpose: "leave-on" | "rinse-off";
    /**
     * Target pH as text.
     */
    targetPh: string;
    /**
     * The maker's notes.
     */
    notes: string;
    /**
     * Method, one step a line.
     */
    steps: string;
    /**
     * Whether the numbers are percent or grams.
     */
    writtenIn: "percent" | "grams";
    /**
     * Unit behind the typed numbers.
     */
    amountUnit: string;
    /**
     * Unit behind the masses.
     */
    massUnit: string;
    /**
     * Sum of the lines, in percent.
     */
    total: string;
    /**
     * Sum of the typed masses, in a formula written in grams.
     */
    totalTyped: string;
    /**
     * Sum of the weigh sheet.
     */
    totalMass: string;
    /**
     * Whether the amounts make a formula.
     */
    sound: boolean;
    /**
     * The phases.
     */
    phases: PhaseView[];
    /**
     * What keeps the amounts from being a formula.
     */
    problems: ProblemView[];
}

/**
 * How a formula is to be worked out and written.
 */
export interface EvaluationOptions {
    /**
     * Mark between whole and fraction; a point unless another is asked for.
     */
    decimalMark?: "point" | "comma";
    /**
     * A batch by mass, as typed, instead of the one the record asks for.
     */
    batch?: string | undefined;
}

/**
 * How a reader wants a shared formula worked out and written.
 */
export interface ReadingOptions {
    /**
     * Mark between whole and fraction; a point unless another is asked for.
     */
    decimalMark?: "point" | "comma";
    /**
     * A batch by mass, as typed, instead of the one the maker asked for.
     */
    batch?: string | undefined;
    /**
     * Unit of mass: `g`, `oz`, …
     */
    massUnit?: string | undefined;
    /**
     * Unit of temperature: `°C` or `°F`.
     */
    temperatureUnit?: string | undefined;
    /**
     * Step of the reader's scale, as typed.
     */
    scaleStep?: string | undefined;
}

/**
 * How a record of a backup stands to what this device keeps.
 */
export type Fate = "new" | "same" | "differs" | "unreadable";

/**
 * How a shared formula stands to what this device keeps.
 */
export type Standing = "new" | "same" | "differs";

/**
 * How keeping stands.
 */
export type KeepState = "kept" | "keeping" | "full" | "blocked" | "conflict";

/**
 * How many containers of a usual size could be filled.
 */
export interface CostSizeView {
    /**
     * The size.
     */
    size: string;
    /**
     * How many, and what is left over.
     */
    count: string;
    /**
     * How many at least and at most; empty where that is the same.
     */
    range: string;
}

/**
 * How the pH moves.
 */
export interface DriftView {
    /**
     * By what.
     */
    label: string;
    /**
     * From where to where.
     */
    value: string;
    /**
     * Which findings come or go.
     */
    changes: RemarkView[];
}

/**
 * Layers of the jar.
 */
export interface JarView {
    /**
     * The layers, top first.
     */
    layers: LayerView[];
    /**
     * The jar in a sentence, for those who do not see it.
     */
    description: string;
    /**
     * Lines that could not be seen through.
     */
    unresolved: string[];
    /**
     * How dense the product is, as far as known.
     */
    density: string;
}

/**
 * Layers side by side.
 */
export interface BarView {
    /**
     * In a sentence, for those who do not see it.
     */
    description: string;
    /**
     * From the left.
     */
    bands: BandView[];
}

/**
 * Letters in one line.
 */
export interface LabelRunView {
    /**
     * Left end.
     */
    x: number;
    /**
     * The line they stand on.
     */
    y: number;
    /**
     * Size of the letters.
     */
    size: number;
    /**
     * How wide they are.
     */
    width: number;
    /**
     * Whether they are bold.
     */
    bold: boolean;
    /**
     * What they say.
     */
    text: string;
}

/**
 * One act of the maker, in one of the rooms.
 */
export type Command = DeskCommand | ShelfCommand | FormulaCommand | BenchCommand | MaterialsCommand | ExtractsCommand | FindingsCommand | PhCommand | BatchesCommand | PasteCommand | ShareCommand | SwapCommand | LabelCommand | PostCommand | CostsCommand;

/**
 * One answer of a search.
 */
export interface MaterialHit {
    /**
     * The material.
     */
    id: string;
    /**
     * Its name.
     */
    name: string;
    /**
     * INCI, class and phase in a few words.
     */
    about: string;
    /**
     * Whether it is the maker's own, a formula, or of the catalogue.
     */
    origin: Origin;
}

/**
 * One batch in the list.
 */
export interface BatchCard {
    /**
     * Names it.
     */
    id: string;
    /**
     * The formula it was made of.
     */
    name: string;
    /**
     * Number and state in a few words.
     */
    about: string;
    /**
     * Whether it is still being made.
     */
    running: boolean;
    /**
     * Whether it asks before it is deleted: it holds what cannot be made again.
     */
    asks: boolean;
}

/**
 * One constituent of a material.
 */
export interface BringsView {
    /**
     * INCI name.
     */
    inci: string;
    /**
     * Percent of the material.
     */
    percent: string;
}

/**
 * One constituent of two jars.
 */
export interface ComparedView {
    /**
     * Its INCI name.
     */
    inci: string;
    /**
     * Percent with the extract.
     */
    with: string;
    /**
     * Percent with glycerin and water in its place.
     */
    without: string;
}

/**
 * One constituent.
 */
export interface ConstituentView {
    /**
     * Names it.
     */
    key: string;
    /**
     * Its INCI name.
     */
    inci: string;
    /**
     * The layer it is drawn in.
     */
    layer: Layer;
    /**
     * Its percent, aligned.
     */
    percent: string;
    /**
     * Which line brings how much. Only `evaluate` hands it out: a page asks `trailOf` for the few that are open.
     */
    trail?: TrailView[];
}

/**
 * One curve.
 */
export interface PlotCurve {
    /**
     * What it is of.
     */
    label: string;
    /**
     * Its points.
     */
    points: [number, number][];
}

/**
 * One extract in the list.
 */
export interface ExtractCard {
    /**
     * Names it.
     */
    id: string;
    /**
     * What the maker calls it.
     */
    name: string;
    /**
     * What it is in a few words.
     */
    about: string;
    /**
     * Whether it is the open one.
     */
    open: boolean;
}

/**
 * One finding.
 */
export interface FindingView {
    /**
     * Names it while the formula changes.
     */
    key: string;
    /**
     * `stop`, `caution` or `note`.
     */
    severity: "stop" | "caution" | "note";
    /**
     * The sentence.
     */
    text: string;
    /**
     * What it is a matter of: solubility, preservation.
     */
    family: string;
    /**
     * The lines behind it.
     */
    lines: number[];
    /**
     * What would remove it.
     */
    cures: string[];
    /**
     * Its arithmetic, sources and picture, if it is open.
     */
    open?: FindingDetail;
}

/**
 * One formula on the shelf.
 */
export interface ShelfCard {
    /**
     * Names it.
     */
    id: string;
    /**
     * What the maker calls it.
     */
    name: string;
    /**
     * Lines, use and state in a few words.
     */
    about: string;
    /**
     * What it is filed under, with commas between.
     */
    tags: string;
    /**
     * Whether its amounts make a formula.
     */
    sound: boolean;
    /**
     * Layers of its jar.
     */
    layers: LayerView[];
}

/**
 * One known value of a material.
 */
export interface ValueView {
    /**
     * What it is.
     */
    label: string;
    /**
     * The value with its unit and conditions.
     */
    value: string;
    /**
     * Where it comes from.
     */
    source: string;
    /**
     * How sure: published, supplier-typical, memory.
     */
    basis: string;
}

/**
 * One layer.
 */
export interface LayerView {
    /**
     * Which.
     */
    layer: Layer;
    /**
     * What it is called.
     */
    label: string;
    /**
     * Its percent.
     */
    percent: string;
    /**
     * Where it begins from the top, from 0 to 1 of the jar.
     */
    top: number;
    /**
     * How high it is, from 0 to 1 of the jar.
     */
    height: number;
}

/**
 * One line of the log.
 */
export interface LogLine {
    /**
     * When.
     */
    time: string;
    /**
     * What.
     */
    text: string;
    /**
     * Whether it was taken back: then it is crossed out, not left out.
     */
    takenBack: boolean;
}

/**
 * One line.
 */
export interface LineView {
    /**
     * Names it.
     */
    id: number;
    /**
     * The material.
     */
    material: string;
    /**
     * Its name.
     */
    name: string;
    /**
     * The layer it goes into.
     */
    layer: Layer;
    /**
     * What a composite brings, in a few words.
     */
    brings: string;
    /**
     * What the field holds.
     */
    amount: string;
    /**
     * Whether it is the q.s. line.
     */
    quantumSatis: boolean;
    /**
     * Its percent, aligned.
     */
    percent: string;
    /**
     * Mass to weigh, aligned.
     */
    mass: string;
    /**
     * Name of the scale, where it is not the main one.
     */
    scale: string;
    /**
     * How far rounding moves the mass.
     */
    error: string;
    /**
     * Whether that is more than the maker accepts.
     */
    errorLarge: boolean;
    /**
     * The maker's note.
     */
    note: string;
    /**
     * What is wrong with the line.
     */
    problem: string;
}

/**
 * One material of a record.
 */
export interface RecordLine {
    /**
     * Its phase, on the first line of each.
     */
    phase: string;
    /**
     * Its common name.
     */
    name: string;
    /**
     * Its INCI names.
     */
    inci: string;
    /**
     * Lot.
     */
    lot: string;
    /**
     * Last day.
     */
    expiry: string;
    /**
     * Percent by the formula.
     */
    percent: string;
    /**
     * Mass wanted.
     */
    target: string;
    /**
     * Mass weighed.
     */
    weighed: string;
    /**
     * How far apart they are.
     */
    deviation: string;
    /**
     * Whether that is more than the scale's step, or its day is past.
     */
    odd: boolean;
}

/**
 * One number that is different.
 */
export interface ChangeView {
    /**
     * Of what.
     */
    name: string;
    /**
     * Its percent before; empty where it was not there.
     */
    before: string;
    /**
     * Its percent after; empty where it is not there any more.
     */
    after: string;
    /**
     * The difference, with its sign.
     */
    difference: string;
}

/**
 * One observation.
 */
export interface EntryView {
    /**
     * Its position.
     */
    entry: number;
    /**
     * Which day of the batch it is, and the date.
     */
    title: string;
    /**
     * What was noted.
     */
    fields: CardField[];
    /**
     * The colour as a screen shows it, `#aabbcc`; empty where none was read.
     */
    swatch: string;
    /**
     * The colour in numbers, and how far it is from day 0.
     */
    colour: string;
    /**
     * Names of its photos.
     */
    photos: string[];
}

/**
 * One part of a composite.
 */
export interface PartView {
    /**
     * The material.
     */
    material: string;
    /**
     * Its name.
     */
    name: string;
    /**
     * What the field holds.
     */
    amount: string;
    /**
     * Its percent.
     */
    percent: string;
    /**
     * Whether it is the q.s. part.
     */
    quantumSatis: boolean;
}

/**
 * One phase.
 */
export interface PhaseView {
    /**
     * Names it.
     */
    id: number;
    /**
     * What the maker calls it.
     */
    name: string;
    /**
     * What is done with it.
     */
    kind: PhaseKind;
    /**
     * What the temperature means here: `to` or `under`.
     */
    temperatureWord: string;
    /**
     * Temperature as text.
     */
    temperature: string;
    /**
     * What stands behind it.
     */
    temperatureUnit: string;
    /**
     * Its share of the formula.
     */
    percent: string;
    /**
     * Its mass on the weigh sheet.
     */
    mass: string;
    /**
     * Its lines, in order.
     */
    lines: number[];
}

/**
 * One record changed in two places.
 */
export interface ConflictView {
    /**
     * Key of the record.
     */
    key: string;
    /**
     * In a sentence.
     */
    text: string;
}

/**
 * One record of a backup.
 */
export interface BackupItem {
    /**
     * What it is.
     */
    kind: string;
    /**
     * What the maker calls it.
     */
    name: string;
    /**
     * How it stands to what is here.
     */
    fate: Fate;
    /**
     * Why it cannot be read, in a sentence; else empty.
     */
    text: string;
}

/**
 * One step in the list.
 */
export interface StepView {
    /**
     * Names it.
     */
    step: string;
    /**
     * What is done.
     */
    label: string;
    /**
     * What came of it.
     */
    about: string;
    /**
     * Whether it is done with.
     */
    done: boolean;
    /**
     * Whether it is in sight.
     */
    here: boolean;
    /**
     * Margin of its phase; empty where it belongs to none.
     */
    phase: string;
}

/**
 * One thing to do, in large type.
 */
export interface CardView {
    /**
     * Names the step.
     */
    step: string;
    /**
     * What kind of step it is.
     */
    kind: string;
    /**
     * Margin of its phase; empty where it belongs to none.
     */
    phase: string;
    /**
     * Where it stands.
     */
    eyebrow: string;
    /**
     * What to do.
     */
    title: string;
    /**
     * The one number that matters now; may be empty.
     */
    big: string;
    /**
     * Its unit.
     */
    unit: string;
    /**
     * What else is to be said, a line each.
     */
    about: string[];
    /**
     * What is wrong.
     */
    warnings: RemarkView[];
    /**
     * Fields to fill in.
     */
    fields: CardField[];
    /**
     * Things to choose: cures, ways out, what comes first.
     */
    choices: ChoiceAct[];
    /**
     * Figures with their arithmetic.
     */
    figures: FigureView[];
    /**
     * A timer.
     */
    timer?: TimerView;
    /**
     * A curve.
     */
    curve?: CurveView;
    /**
     * What the large area does.
     */
    next: ChoiceAct;
}

/**
 * One way to do without a line.
 */
export interface SwapWayView {
    /**
     * Names it.
     */
    key: string;
    /**
     * `same` for another strength, `parts` for what it is made of or makes, `other` for what does its job.
     */
    kind: "same" | "parts" | "other";
    /**
     * What is taken instead.
     */
    name: string;
    /**
     * What is weighed then.
     */
    takes: string;
    /**
     * Whether it is on the shelf.
     */
    atHand: boolean;
    /**
     * Whether it is looked at.
     */
    chosen: boolean;
    /**
     * Why it is offered.
     */
    reasons: string[];
    /**
     * What becomes different.
     */
    differences: string[];
    /**
     * What the checks find then, or find no longer.
     */
    findings: RemarkView[];
    /**
     * Where the figures were found.
     */
    sources: string[];
    /**
     * Why it cannot be done.
     */
    problem: string;
}

/**
 * Photos on this device that no batch has any more.
 */
export interface StrayPhotos {
    /**
     * How many there are, in a sentence; empty if none.
     */
    text: string;
    /**
     * Their names.
     */
    names: string[];
}

/**
 * Settings of this device.
 */
export interface SettingsView {
    /**
     * `point`, `comma` or `browser`.
     */
    decimalMark: string;
    /**
     * Unit of mass, by its symbol.
     */
    massUnit: string;
    /**
     * Unit of volume, by its symbol.
     */
    volumeUnit: string;
    /**
     * Unit of temperature.
     */
    temperatureUnit: string;
    /**
     * Step of the main scale.
     */
    mainStep: string;
    /**
     * Whether there is a fine scale.
     */
    fineScale: boolean;
    /**
     * Step of the fine scale.
     */
    fineStep: string;
    /**
     * Mass under which the fine scale is used.
     */
    fineBelow: string;
    /**
     * Relative error a line may have.
     */
    tolerance: string;
}

/**
 * Sheets to print, in millimetres.
 */
export interface LabelSheetView {
    /**
     * The paper.
     */
    paper: "a4" | "letter";
    /**
     * How wide it is.
     */
    width: number;
    /**
     * How high.
     */
    height: number;
    /**
     * Upper left corners of the labels of a full sheet.
     */
    places: [number, number][];
    /**
     * How many sheets.
     */
    sheets: number;
    /**
     * How many labels are on the last.
     */
    onLast: number;
    /**
     * All that in a sentence.
     */
    about: string;
}

/**
 * Something before and after.
 */
export interface SwapPairView {
    /**
     * What.
     */
    name: string;
    /**
     * Its layer, for a layer.
     */
    layer?: Layer;
    /**
     * Percent before; empty where it was not there.
     */
    before: string;
    /**
     * Percent after; empty where it is gone.
     */
    after: string;
    /**
     * Mass to weigh in the batch after; empty for a layer.
     */
    mass: string;
    /**
     * `same`, `changed`, `new` or `gone`.
     */
    fate: "same" | "changed" | "new" | "gone";
}

/**
 * Something that can be done, worked out.
 */
export interface OfferView {
    /**
     * Which.
     */
    offer: ExtractOffer;
    /**
     * What it comes to, a line each.
     */
    lines: string[];
    /**
     * Why it cannot be done.
     */
    problem: string;
    /**
     * What its button says; empty where it cannot be done.
     */
    label: string;
}

/**
 * Something that is due.
 */
export interface DueToday {
    /**
     * What is to be done: `look` at a batch, or `use` a material.
     */
    act: "look" | "use";
    /**
     * Names the batch or the material.
     */
    key: string;
    /**
     * What it is about.
     */
    name: string;
    /**
     * What else is to be said of it.
     */
    about: string;
    /**
     * Whether its day is past, or close.
     */
    late: boolean;
}

/**
 * Something the maker should hear once.
 */
export interface Notice {
    /**
     * Stable code.
     */
    code: string;
    /**
     * The sentence.
     */
    text: string;
    /**
     * The change that [`UndoAct`](crate::rooms::command::DeskCommand::UndoAct) takes back from here, while nothing was done since.
     */
    undo?: number;
}

/**
 * Something to choose.
 */
export interface ChoiceAct {
    /**
     * What it says; empty where there is nothing to choose.
     */
    label: string;
    /**
     * What it comes to.
     */
    about: string;
    /**
     * What is sent; of the large area, with what was typed in the fields that go along with it.
     */
    command?: BatchesCommand;
    /**
     * Whether it cannot be chosen; `about` says why.
     */
    refused: boolean;
}

/**
 * Something to choose.
 */
export interface ChoiceView {
    /**
     * Names it.
     */
    key: string;
    /**
     * What it is called.
     */
    label: string;
}

/**
 * Something worked out that can be put into the formula.
 */
export interface PhOfferView {
    /**
     * Which.
     */
    offer: PhOffer;
    /**
     * What it hangs on.
     */
    fields: PhFieldView[];
    /**
     * What it comes to, a line each.
     */
    lines: string[];
    /**
     * How what is weighed is handled.
     */
    cautions: string[];
    /**
     * What the button says; empty where there is nothing to put in.
     */
    label: string;
    /**
     * Why not.
     */
    problem: string;
}

/**
 * The batch and how it was come by.
 */
export interface BatchView {
    /**
     * Which way counts.
     */
    way: "mass" | "containers" | "stock";
    /**
     * Batch mass asked for.
     */
    mass: string;
    /**
     * How many containers.
     */
    count: string;
    /**
     * What each holds.
     */
    volume: string;
    /**
     * Share left empty.
     */
    headspace: string;
    /**
     * Share lost.
     */
    loss: string;
    /**
     * Measured density; empty if it is estimated.
     */
    density: string;
    /**
     * The estimate, for the empty field.
     */
    densityEstimate: string;
    /**
     * What is left of materials.
     */
    stock: StockView[];
    /**
     * Materials of the formula of which it is not said how much is left.
     */
    atHand: AtHandView[];
    /**
     * The batch the sheet makes.
     */
    batch: string;
    /**
     * How it was come by, a line each.
     */
    arithmetic: string[];
    /**
     * What the maker should know about it.
     */
    remarks: string[];
    /**
     * Why there is no batch or no sheet.
     */
    problem: string;
    /**
     * Whether there is a sheet.
     */
    hasSheet: boolean;
    /**
     * Smallest batch with every line within the tolerance, in a sentence.
     */
    smallest: string;
    /**
     * How what is on the sheet is handled, where something on it is caustic.
     */
    handling: string[];
    /**
     * Lines whose rounding error is larger than the maker accepts, in a sentence.
     */
    warning: string;
}

/**
 * The formula as a picture.
 */
export interface PostPictureView {
    /**
     * The drawing as a file.
     */
    svg: string;
    /**
     * How wide it is, in its own units.
     */
    width: number;
    /**
     * How high.
     */
    height: number;
    /**
     * In a sentence, for those who do not see it.
     */
    description: string;
    /**
     * The field that takes the link in.
     */
    field: string;
    /**
     * Whether it carries the link.
     */
    linked: boolean;
}

/**
 * The formula before and after.
 */
export interface SwapVersionView {
    /**
     * What changes, in a sentence.
     */
    summary: string;
    /**
     * Line by line.
     */
    lines: SwapPairView[];
    /**
     * What is in the jar by layer.
     */
    layers: SwapPairView[];
    /**
     * The layers as a bar.
     */
    before: BarView;
    /**
     * The layers of the version as a bar.
     */
    after: BarView;
    /**
     * What the checks no longer find.
     */
    gone: RemarkView[];
    /**
     * What they find then.
     */
    new: RemarkView[];
    /**
     * What it costs, or what has no price; may be empty.
     */
    cost: string;
    /**
     * What to expect on skin.
     */
    expect: string[];
    /**
     * What of the formula is missed, and by how much.
     */
    missed: string[];
    /**
     * What the button says; empty where nothing changes.
     */
    label: string;
}

/**
 * The inside of a finding.
 */
export interface FindingDetail {
    /**
     * What it means and why it matters.
     */
    meaning: string;
    /**
     * The arithmetic, line by line.
     */
    working: string[];
    /**
     * Where limit and equation come from.
     */
    sources: FindingSource[];
    /**
     * A picture.
     */
    chart?: ChartView;
}

/**
 * The journal of the open batch.
 */
export interface JournalView {
    /**
     * Names the batch; absent when none is open.
     */
    id?: string;
    /**
     * What was seen, by day.
     */
    entries: EntryView[];
    /**
     * Days on which to look, and whether that was done.
     */
    due: DueView[];
    /**
     * How the colour changed.
     */
    colour: FigureView[];
    /**
     * The fade, plotted.
     */
    curve?: CurveView;
    /**
     * Days to look again, as a calendar file.
     */
    calendar: string;
    /**
     * Name of that file.
     */
    calendarName: string;
}

/**
 * The label of the open formula.
 */
export interface LabelView {
    /**
     * Why there is none; then all below is empty.
     */
    problem: string;
    /**
     * What can be filled in.
     */
    fields: LabelFieldView[];
    /**
     * The ingredients as the label lists them.
     */
    declaration: string;
    /**
     * The same name by name.
     */
    names: LabelNameView[];
    /**
     * What is not certain of them, and what is to be known.
     */
    said: RemarkView[];
    /**
     * Allergens in it, those to be named first.
     */
    allergens: LabelAllergenView[];
    /**
     * What is above the table of allergens, or stands in its place.
     */
    allergensAbout: string;
    /**
     * Sentences the label carries or could.
     */
    statements: LabelStatementView[];
    /**
     * What is still missing on it.
     */
    missing: RemarkView[];
    /**
     * Words on it that would make something else of the product, or promise too much.
     */
    wording: RemarkView[];
    /**
     * The label, drawn.
     */
    art?: LabelArtView;
    /**
     * Why it is not drawn.
     */
    tooSmall: string;
    /**
     * What is to be said of the address on it.
     */
    link: RemarkView[];
    /**
     * How large its letters are and have to be.
     */
    lettering: FigureView[];
    /**
     * Sheets of it.
     */
    sheet?: LabelSheetView;
}

/**
 * The maker's batches.
 */
export interface BatchesView {
    /**
     * Each of them, the last begun first.
     */
    cards: BatchCard[];
    /**
     * What a batch of the open formula would be, for the button that begins it; empty where none can be begun.
     */
    offer: string;
    /**
     * Why none can be begun.
     */
    problem: string;
}

/**
 * The maker's extracts and solutions.
 */
export interface ExtractsView {
    /**
     * Each of them, last changed first.
     */
    cards: ExtractCard[];
    /**
     * Plants the catalogue knows the water of.
     */
    plants: ChoiceView[];
}

/**
 * The open batch.
 */
export interface RunView {
    /**
     * Names it; absent when none is open.
     */
    id?: string;
    /**
     * The formula it is made of.
     */
    name: string;
    /**
     * Its number.
     */
    lot: string;
    /**
     * Whether all is done.
     */
    finished: boolean;
    /**
     * Steps that are done with.
     */
    done: number;
    /**
     * All steps.
     */
    of: number;
    /**
     * What is wrong before anything is weighed: a material past its day.
     */
    warnings: RemarkView[];
    /**
     * Every step.
     */
    steps: StepView[];
    /**
     * The one in sight.
     */
    card: CardView;
    /**
     * What the next taking back takes back; empty where there is nothing.
     */
    takeBack: string;
    /**
     * The record.
     */
    record: RecordView;
}

/**
 * The open extract.
 */
export interface ExtractView {
    /**
     * Names it; absent when none is open.
     */
    id?: string;
    /**
     * What it is.
     */
    kind: ExtractKind;
    /**
     * What the maker calls it.
     */
    name: string;
    /**
     * Whether it was blended, so that there is no plan.
     */
    blended: boolean;
    /**
     * What each field holds.
     */
    fields: FieldText[];
    /**
     * Sentences beside fields that depend on them.
     */
    plant: string;
    /**
     * Why there is nothing to predict.
     */
    problem: string;
    /**
     * What it is made of.
     */
    parts: FigureView[];
    /**
     * What to expect of it.
     */
    figures: FigureView[];
    /**
     * What was done to it after pressing.
     */
    steps: string[];
    /**
     * Where it stands between water and pure glycerin.
     */
    scale?: ScaleView;
    /**
     * Whether it keeps.
     */
    keeping?: KeepingView;
    /**
     * What can be done, worked out.
     */
    offers: OfferView[];
    /**
     * Batches chosen for a blend.
     */
    blend: ChoiceView[];
    /**
     * Other extracts a blend could take.
     */
    others: ChoiceView[];
    /**
     * The open formula with it, and with glycerin and water in its place.
     */
    comparison: ComparedView[];
    /**
     * What is compared, or why nothing is.
     */
    compared: string;
}

/**
 * The open formula made with what one has.
 */
export interface SwapView {
    /**
     * Why there is nothing to work out; then all below is empty.
     */
    problem: string;
    /**
     * What is asked.
     */
    wanted: SwapUse;
    /**
     * Lines of the formula.
     */
    lines: SwapLineView[];
    /**
     * The line that is swapped.
     */
    line?: number;
    /**
     * What is weighed in it.
     */
    name: string;
    /**
     * What its author says to take instead, as the field holds it.
     */
    note: string;
    /**
     * Ways to do without the line, worked out.
     */
    ways: SwapWayView[];
    /**
     * What is asked hangs on these.
     */
    fields: PhFieldView[];
    /**
     * What is to be said of the shelf: what is past its date, what has no price.
     */
    said: string[];
    /**
     * Why there is no answer, and the least that would help.
     */
    refused: string[];
    /**
     * What was worked out.
     */
    version?: SwapVersionView;
}

/**
 * The open material.
 */
export interface MaterialView {
    /**
     * The material; absent when none is open.
     */
    id?: string;
    /**
     * Whether the maker can change it.
     */
    own: boolean;
    /**
     * Whether it is made of others.
     */
    composite: boolean;
    /**
     * Its name.
     */
    name: string;
    /**
     * Its INCI name, where it is simple.
     */
    inci: string;
    /**
     * What it is.
     */
    class?: Class;
    /**
     * What that is called.
     */
    classLabel: string;
    /**
     * Phase it usually goes into.
     */
    phaseKind?: PhaseKind;
    /**
     * What that is called.
     */
    phaseLabel: string;
    /**
     * Its density.
     */
    density: string;
    /**
     * The maker's note.
     */
    note: string;
    /**
     * Its parts.
     */
    parts: PartView[];
    /**
     * Sum of the parts.
     */
    partsTotal: string;
    /**
     * What is wrong with it.
     */
    problems: string[];
    /**
     * What it brings, most first.
     */
    constituents: BringsView[];
    /**
     * Known values, each with its source.
     */
    values: ValueView[];
    /**
     * Formulas that use it.
     */
    usedIn: string[];
    /**
     * What the maker has of it.
     */
    holding: HoldingView;
}

/**
 * The pH of the open formula.
 */
export interface PhView {
    /**
     * Why there is nothing to say; then all below is empty.
     */
    problem: string;
    /**
     * What is aimed at, as its field holds it.
     */
    target: string;
    /**
     * What was measured, as its field holds it.
     */
    measured: string;
    /**
     * What it comes to as it is written.
     */
    predicted?: FigureView;
    /**
     * Which pH the checks read.
     */
    counts: string;
    /**
     * What decides it, the one that moves it most first.
     */
    deciders: FigureView[];
    /**
     * What is not known, with what it can move.
     */
    unknown: FigureView[];
    /**
     * What else the prediction rests on.
     */
    rests: string[];
    /**
     * What can be put into the formula.
     */
    offers: PhOfferView[];
    /**
     * What of fruit acids and salicylic acid is free.
     */
    freeAcids: FigureView[];
    /**
     * How much it buffers.
     */
    capacity?: FigureView;
    /**
     * How it moves in the jar.
     */
    drifts: DriftView[];
    /**
     * Pictures.
     */
    plots: PlotView[];
    /**
     * Which acid's forms are drawn.
     */
    species?: PhFieldView;
}

/**
 * The parts of the view that changed. A part that is absent stands as it was.
 */
export interface Update {
    /**
     * What became of the command.
     */
    answer?: Answer;
    /**
     * What is kept where.
     */
    status?: StatusView;
    /**
     * What can be undone.
     */
    history?: HistoryView;
    /**
     * Settings of this device.
     */
    settings?: SettingsView;
    /**
     * The shelf.
     */
    shelf?: ShelfView;
    /**
     * Head, phases and problems of the open formula.
     */
    formula?: FormulaView;
    /**
     * Lines of the open formula that changed; [`PhaseView::lines`] says where each stands.
     */
    lines?: LineView[];
    /**
     * Layers of the jar.
     */
    jar?: JarView;
    /**
     * Constituents that changed; [`Update::constituent_order`] says which there are.
     */
    constituents?: ConstituentView[];
    /**
     * Every constituent by key, most first, if that is another order than before.
     */
    constituentOrder?: string[];
    /**
     * What the checks found.
     */
    findings?: FindingsView;
    /**
     * The batch and how it was come by.
     */
    batch?: BatchView;
    /**
     * The maker's own materials.
     */
    ownMaterials?: MaterialHit[];
    /**
     * What the maker has.
     */
    held?: HeldView[];
    /**
     * What is due today.
     */
    due?: DueToday[];
    /**
     * The open material; `closed` when there is none.
     */
    material?: MaterialView;
    /**
     * The maker's extracts.
     */
    extracts?: ExtractsView;
    /**
     * The open extract.
     */
    extract?: ExtractView;
    /**
     * The pH of the open formula.
     */
    ph?: PhView;
    /**
     * The open formula made with what one has.
     */
    swap?: SwapView;
    /**
     * The label of the open formula.
     */
    label?: LabelView;
    /**
     * The post about the open formula.
     */
    post?: PostView;
    /**
     * What the open formula costs.
     */
    costs?: CostsView;
    /**
     * The maker's batches.
     */
    batches?: BatchesView;
    /**
     * The open batch.
     */
    run?: RunView;
    /**
     * Its journal.
     */
    journal?: JournalView;
    /**
     * What the maker should hear once.
     */
    notices?: Notice[];
}

/**
 * The post about the open formula.
 */
export interface PostView {
    /**
     * Why there is none; then all below is empty.
     */
    problem: string;
    /**
     * Its parts, each with whether it is in.
     */
    parts: PostPartView[];
    /**
     * The sizes of batch, each a field.
     */
    sizes: PhFieldView[];
    /**
     * Whether what can be taken instead was worked out; until then only what the author notes is there.
     */
    swapsKnown: boolean;
    /**
     * Name of the formula.
     */
    title: string;
    /**
     * What it is, in a few words.
     */
    about: string;
    /**
     * The parts that are in, in the order of the page.
     */
    sections: PostSectionView[];
    /**
     * All of it as Markdown.
     */
    markdown: string;
    /**
     * All of it as HTML to paste into a page.
     */
    html: string;
    /**
     * All of it as a page of its own.
     */
    page: string;
    /**
     * The formula as a picture.
     */
    picture?: PostPictureView;
}

/**
 * The record of a batch.
 */
export interface RecordView {
    /**
     * Head: what stands for the whole batch.
     */
    head: PairView[];
    /**
     * The materials.
     */
    materials: RecordLine[];
    /**
     * Sum of the masses, wanted and weighed.
     */
    total: PairView;
    /**
     * What was done, in order.
     */
    log: LogLine[];
    /**
     * What went otherwise than planned.
     */
    deviations: string[];
    /**
     * What came out.
     */
    results: PairView[];
    /**
     * What is really in it, where it differs from the plan.
     */
    composition: PairView[];
    /**
     * What the checks find in it that they do not find in the plan.
     */
    findings: RemarkView[];
    /**
     * Dates and why.
     */
    dates: FigureView[];
    /**
     * Fields the maker fills in.
     */
    fields: CardField[];
    /**
     * What is to be signed.
     */
    signatures: string[];
    /**
     * What is to be said of all this.
     */
    cautions: string[];
}

/**
 * The scale from water to pure glycerin. Places are in percent of its height, from the top.
 */
export interface ScaleView {
    /**
     * The scale in words.
     */
    description: string;
    /**
     * Steps at which more can multiply.
     */
    marks: MarkView[];
    /**
     * Where organisms begin to multiply.
     */
    ticks: number[];
    /**
     * The glycerin in percent along it.
     */
    percents: MarkView[];
    /**
     * Where this liquid stands.
     */
    here: MarkView;
    /**
     * Where its band ends on the strong side.
     */
    top: number;
    /**
     * How long the band is.
     */
    height: number;
}

/**
 * The settings the page can change.
 */
export type SettingName = "decimal-mark" | "mass-unit" | "volume-unit" | "temperature-unit" | "main-step" | "fine-scale" | "fine-step" | "fine-below" | "tolerance";

/**
 * The shelf.
 */
export interface ShelfView {
    /**
     * The formulas that are shown, last changed first.
     */
    cards: ShelfCard[];
    /**
     * How many more there are of those that are looked for.
     */
    more: number;
    /**
     * How many stand on the shelf.
     */
    all: number;
    /**
     * The same in words.
     */
    total: string;
    /**
     * Every tag there is, by name.
     */
    tags: string[];
    /**
     * The one that every card shown has; empty where none is asked for.
     */
    tag: string;
    /**
     * The one that is open.
     */
    open?: string;
}

/**
 * The text of a file, or why it has none.
 */
export interface RecipeFileView {
    /**
     * What it says; none where it could not be read.
     */
    text?: string;
    /**
     * What has to be known about it, or why it was not read, in a sentence; may be empty.
     */
    said: string;
}

/**
 * The texts of an own material.
 */
export type MaterialField = "name" | "inci" | "density" | "note";

/**
 * What a batch of the open formula costs.
 */
export interface CostsView {
    /**
     * Why there is nothing to show; then all below is empty.
     */
    problem: string;
    /**
     * Name of the formula, as a printed sheet is headed.
     */
    name: string;
    /**
     * What is reckoned, in a sentence.
     */
    about: string;
    /**
     * What matters most: a unit, or 100 g where no units are known. Empty where nothing has a price.
     */
    headline: string;
    /**
     * What that is.
     */
    headlineAbout: string;
    /**
     * Batch, unit, 100 g and what they are made of.
     */
    figures: FigureView[];
    /**
     * What is missing from the sums, and what is to be known of them.
     */
    said: RemarkView[];
    /**
     * What each line costs, and what making it adds; they sum to the batch.
     */
    lines: CostLineView[];
    /**
     * What can be filled in.
     */
    fields: CostFieldView[];
    /**
     * How the containers come out.
     */
    filling: FigureView[];
    /**
     * Further kinds of containers.
     */
    kinds: CostKindView[];
    /**
     * Whether another kind can be listed.
     */
    moreKinds: boolean;
    /**
     * What the act says that plans a batch for as many of each kind as are wanted; empty where there is none.
     */
    planKinds: string;
    /**
     * What is short of the kinds, and what nobody takes.
     */
    kindsSaid: RemarkView[];
    /**
     * How many of each usual size could be filled.
     */
    sizes: CostSizeView[];
    /**
     * What does not go with the containers.
     */
    misfits: RemarkView[];
    /**
     * What is needed of each material, and whole packs to buy.
     */
    buy: CostBuyView[];
    /**
     * The containers to buy.
     */
    buyContainers: CostPiecesView[];
    /**
     * What all of them cost.
     */
    buyAbout: string;
    /**
     * What has to be bought, as text.
     */
    buyText: string;
    /**
     * The same as a table for a spreadsheet.
     */
    buyTable: string;
}

/**
 * What a field holds.
 */
export interface FieldText {
    /**
     * Its name.
     */
    field: string;
    /**
     * Its text.
     */
    text: string;
}

/**
 * What a line of the formula costs, or what making it adds.
 */
export interface CostLineView {
    /**
     * What it is.
     */
    name: string;
    /**
     * How much of it goes in, or what it is counted by.
     */
    about: string;
    /**
     * What it costs, or that no price is known.
     */
    cost: string;
    /**
     * Its share of the batch, as text; empty where no price is known.
     */
    share: string;
    /**
     * The same from 0 to 1, for a bar.
     */
    fraction: number;
    /**
     * The layer its colour is of.
     */
    layer: Layer;
    /**
     * Whether its price, or that of a part of it, is not known.
     */
    unknown: boolean;
}

/**
 * What a maker says of what they have of a material.
 */
export type HoldingField = "price" | "currency" | "pack" | "shipping" | "stock" | "lot" | "expiry" | "density" | "usual" | "note";

/**
 * What a page says of itself when it opens a session.
 */
export interface Reader {
    /**
     * Decimal mark of the browser's language.
     */
    decimalMark: "point" | "comma";
    /**
     * Keep nothing: for a page that only shows.
     */
    keepNothing?: boolean;
}

/**
 * What a reader lacks.
 */
export interface Lacks {
    /**
     * Each line.
     */
    lines?: Lack[];
}

/**
 * What became of a command.
 */
export interface Answer {
    /**
     * The field the command came from.
     */
    field?: string;
    /**
     * Why its text was not understood; absent if it was. The last good value stays.
     */
    error?: string;
    /**
     * Stable code of the error.
     */
    code?: string;
    /**
     * What the command made, for the page to go to: a formula, line, phase or material.
     */
    made?: string;
}

/**
 * What can be undone.
 */
export interface HistoryView {
    /**
     * Label of undo, if there is something to undo.
     */
    undo?: string;
    /**
     * Number of the change that undo takes back.
     */
    undoes?: number;
    /**
     * Label of redo, if there is something to redo.
     */
    redo?: string;
}

/**
 * What is different between two versions of a formula.
 */
export interface ComparisonView {
    /**
     * In a sentence.
     */
    summary: string;
    /**
     * Materials whose percent is different.
     */
    lines: ChangeView[];
    /**
     * Constituents of the finished product whose percent is different, largest difference first.
     */
    composition: ChangeView[];
    /**
     * What else is different, a sentence each.
     */
    others: string[];
}

/**
 * What is kept where.
 */
export interface StatusView {
    /**
     * How it stands.
     */
    state: KeepState;
    /**
     * In a sentence.
     */
    text: string;
    /**
     * Records that were changed elsewhere too.
     */
    conflicts: ConflictView[];
    /**
     * Records that could not be read, and why.
     */
    unreadable: string[];
}

/**
 * What is left of a material.
 */
export interface StockView {
    /**
     * The material.
     */
    material: string;
    /**
     * Its name.
     */
    name: string;
    /**
     * How much is there.
     */
    available: string;
    /**
     * What the batch leaves of it, or why it does not count.
     */
    left: string;
    /**
     * Whether it sets the batch.
     */
    limiting: boolean;
}

/**
 * What one line brings.
 */
export interface TrailView {
    /**
     * The line; [`LineView::name`] says what is weighed there.
     */
    line: number;
    /**
     * What it brings, aligned.
     */
    percent: string;
}

/**
 * What something is called and what it is.
 */
export interface PairView {
    /**
     * What it is called.
     */
    label: string;
    /**
     * What it is.
     */
    value: string;
}

/**
 * What the maker has of a material, as its fields hold it.
 */
export interface HoldingView {
    /**
     * Price of a pack.
     */
    price: string;
    /**
     * Its currency.
     */
    currency: string;
    /**
     * What a pack holds.
     */
    pack: string;
    /**
     * What getting a pack here adds.
     */
    shipping: string;
    /**
     * How much is there.
     */
    stock: string;
    /**
     * Lot number.
     */
    lot: string;
    /**
     * Last day it should be used, as `2027-05-31`.
     */
    expiry: string;
    /**
     * Density as measured.
     */
    density: string;
    /**
     * Usual percent by experience.
     */
    usual: string;
    /**
     * Notes.
     */
    note: string;
    /**
     * Price per 100 of the maker's unit and whether the material is past its date, in sentences.
     */
    remarks: string[];
}

/**
 * What the maker has of a material.
 */
export interface HeldView {
    /**
     * The material.
     */
    id: string;
    /**
     * Its name.
     */
    name: string;
    /**
     * The layer it goes into.
     */
    layer: Layer;
    /**
     * Its lot, where one is noted.
     */
    about: string;
    /**
     * How much there is, with its unit; empty where that is not noted.
     */
    stock: string;
    /**
     * By when it should be used, in words; empty where no day is noted.
     */
    until: string;
    /**
     * Whether that day is past, or comes soon.
     */
    late: boolean;
}

/**
 * What the page can ask of a pasted recipe.
 */
export type PasteCommand = { do: "make-of-recipe" };

/**
 * What the page can ask of making it with what one has. Text fields carry what was typed, as it was typed.
 */
export type SwapCommand = { do: "look-at-swap"; looking: boolean } | { do: "choose-swap-use"; wanted: SwapUse } | { do: "swap-line"; line: number } | { do: "choose-way"; way: string } | { do: "set-substitution"; line: number; text: string } | { do: "mark-line"; line: number; marked: boolean } | { do: "set-swap-field"; field: string; text: string } | { do: "take-swap"; text: string };

/**
 * What the page can ask of sharing and keeping. Text fields carry what was typed, as it was typed.
 */
export type ShareCommand = { do: "keep-copy"; link: string } | { do: "restore-backup"; differing: "both" | "theirs" } | { do: "restore-version"; formula: string; version: string };

/**
 * What the page can ask of the batches. Text fields carry what was typed, as it was typed; where nothing was typed,
 * what was planned is meant. A card hands out the command of each of its fields and choices; the page puts what was typed
 * into it and sends it back.
 */
export type BatchesCommand = { do: "look-at-batches"; looking: boolean } | { do: "begin-batch"; formula: string | undefined } | { do: "open-batch"; batch: string } | { do: "close-batch" } | { do: "delete-batch"; batch: string } | { do: "set-lot"; text: string } | { do: "look-at-step"; step: string | undefined } | { do: "start-run" } | { do: "begin-with-phase"; phase: number } | { do: "weigh-empty-beaker"; phase: number; text: string } | { do: "pour"; line: number; text: string } | { do: "leave-out"; line: number } | { do: "accept-pour"; line: number } | { do: "rescale-to-pour"; line: number } | { do: "take-from-rest"; line: number } | { do: "weigh-cold"; phase: number; text: string } | { do: "weigh-hot"; phase: number; text: string } | { do: "put-back-water"; phase: number | undefined; text: string } | { do: "note-temperature"; of: string; text: string } | { do: "start-timer"; step: string; text: string } | { do: "stop-timer"; step: string } | { do: "resume-timer"; step: string } | { do: "temper"; phase: number; text: string } | { do: "weigh-batch"; gross: string; empty: string } | { do: "note-ph"; text: string } | { do: "plan-titration"; name: string; text: string } | { do: "take-ph-sample"; text: string } | { do: "add-drops"; text: string } | { do: "add-to-sample"; text: string } | { do: "read-sample"; text: string } | { do: "correct-ph"; text: string } | { do: "accept-ph" } | { do: "fill"; count: string; each: string } | { do: "say"; name: string; text: string } | { do: "close-step"; step: string } | { do: "finish-run" } | { do: "take-back" } | { do: "begin-entry"; text: string } | { do: "note-entry"; entry: number; name: string; text: string } | { do: "add-photo"; entry: number; name: string } | { do: "remove-entry"; entry: number };

/**
 * What the page can ask of the bench. Text fields carry what was typed, as it was typed.
 */
export type BenchCommand = { do: "set-batch-way"; way: "mass" | "containers" | "stock" } | { do: "set-batch-mass"; text: string } | { do: "set-container-count"; text: string } | { do: "set-container-volume"; text: string } | { do: "set-headspace"; text: string } | { do: "set-loss"; text: string } | { do: "set-density"; text: string } | { do: "set-stock"; material: string; text: string } | { do: "remove-stock"; material: string } | { do: "set-setting"; name: SettingName; text: string };

/**
 * What the page can ask of the costs. Text fields carry what was typed, as it was typed.
 */
export type CostsCommand = { do: "look-at-costs"; looking: boolean } | { do: "set-cost-field"; field: string; text: string } | { do: "add-container-kind" } | { do: "remove-container-kind"; kind: string } | { do: "plan-container-kinds" } | { do: "take-prices" };

/**
 * What the page can ask of the extracts. Text fields carry what was typed, as it was typed.
 */
export type ExtractsCommand = { do: "look-at-extracts"; looking: boolean } | { do: "new-extract"; kind: ExtractKind } | { do: "open-extract"; extract: string } | { do: "delete-extract"; extract: string } | { do: "restore-extract-example" } | { do: "set-extract"; field: string; text: string } | { do: "remove-from-blend"; field: string } | { do: "remove-extract-step"; step: number } | { do: "take-extract-offer"; offer: ExtractOffer };

/**
 * What the page can ask of the findings. Text fields carry what was typed, as it was typed.
 */
export type FindingsCommand = { do: "open-finding"; key: string; open: boolean } | { do: "cure-finding"; key: string; cure: number; text: string } | { do: "set-aside-finding"; key: string; text: string } | { do: "take-finding-back"; key: string } | { do: "set-suspended"; line: number; suspended: boolean } | { do: "set-cold-storage"; text: string } | { do: "set-kind"; text: string } | { do: "set-measured-ph"; text: string };

/**
 * What the page can ask of the label. Text fields carry what was typed, as it was typed.
 */
export type LabelCommand = { do: "look-at-label"; looking: boolean } | { do: "set-label-field"; field: string; text: string };

/**
 * What the page can ask of the materials. Text fields carry what was typed, as it was typed.
 */
export type MaterialsCommand = { do: "new-material"; composite: boolean; name: string } | { do: "copy-material"; material: string } | { do: "open-material"; material: string } | { do: "close-material" } | { do: "set-material-text"; field: MaterialField; text: string } | { do: "set-material-class"; class: Class } | { do: "set-material-phase"; kind: PhaseKind } | { do: "add-part"; material: string } | { do: "set-part-amount"; part: number; text: string } | { do: "remove-part"; part: number } | { do: "delete-material"; material: string } | { do: "set-holding"; material: string; field: HoldingField; text: string } | { do: "import-table" };

/**
 * What the page can ask of the open formula. Text fields carry what was typed, as it was typed.
 */
export type FormulaCommand = { do: "set-purpose"; purpose: "leave-on" | "rinse-off" } | { do: "set-target-ph"; text: string } | { do: "set-notes"; text: string } | { do: "set-steps"; text: string } | { do: "write-in"; basis: "percent" | "grams" } | { do: "add-phase"; kind: PhaseKind } | { do: "rename-phase"; phase: number; name: string } | { do: "set-phase-kind"; phase: number; kind: PhaseKind } | { do: "set-phase-temperature"; phase: number; text: string } | { do: "move-phase"; phase: number; position: number } | { do: "remove-phase"; phase: number } | { do: "add-line"; phase: number; material: string } | { do: "set-amount"; line: number; text: string } | { do: "set-quantum-satis"; line: number } | { do: "set-line-note"; line: number; text: string } | { do: "replace-material"; line: number; material: string } | { do: "move-line"; line: number; phase: number; position: number } | { do: "step-line"; line: number; down: boolean } | { do: "remove-line"; line: number } | { do: "apply-cure"; code: string; problem: number; cure: number };

/**
 * What the page can ask of the pH. Text fields carry what was typed, as it was typed.
 */
export type PhCommand = { do: "look-at-ph"; looking: boolean } | { do: "set-ph-field"; field: string; text: string } | { do: "take-ph-offer"; offer: PhOffer; text: string };

/**
 * What the page can ask of the post. Text fields carry what was typed, as it was typed.
 */
export type PostCommand = { do: "look-at-post"; looking: boolean; address: string } | { do: "set-post-field"; field: string; text: string };

/**
 * What the page can ask of the shelf. Text fields carry what was typed, as it was typed.
 */
export type ShelfCommand = { do: "new-formula"; basis: "percent" | "grams" } | { do: "open-formula"; formula: string } | { do: "duplicate-formula"; formula: string } | { do: "rename-formula"; formula: string; name: string } | { do: "tag-formula"; formula: string; text: string } | { do: "show-tag"; tag: string } | { do: "delete-formula"; formula: string } | { do: "see-example"; example: Example } | { do: "search-shelf"; text: string } | { do: "sort-shelf"; order: "changed" | "name" } | { do: "look-at-shelf"; looking: boolean } | { do: "look-further" };

/**
 * What the page can ask whatever the room: taking back, and what another page changed. Text fields carry what was typed, as it was typed.
 */
export type DeskCommand = { do: "undo" } | { do: "undo-act"; change: number } | { do: "redo" } | { do: "changed-elsewhere"; key: string } | { do: "take-theirs"; key: string } | { do: "keep-both"; key: string };

/**
 * Where a material comes from.
 */
export type Origin = "catalogue" | "own" | "formula";

/**
 * Where the open jar stands.
 */
export interface LabelJarView {
    /**
     * Left edge.
     */
    x: number;
    /**
     * Upper edge.
     */
    y: number;
    /**
     * How wide and high it is.
     */
    side: number;
}

/**
 * Whether it keeps.
 */
export interface KeepingView {
    /**
     * In a sentence.
     */
    verdict: string;
    /**
     * Tone of the verdict.
     */
    tone: "stop" | "caution" | "note";
    /**
     * When to throw it away at the latest.
     */
    useBy: string;
    /**
     * What else is to be said.
     */
    remarks: string[];
    /**
     * Organisms that can multiply, the hardiest first.
     */
    multiply: ChoiceView[];
    /**
     * Organisms that cannot, the nearest first.
     */
    heldBack: ChoiceView[];
}

/**
 * Which materials a search may return.
 */
export interface SearchFilter {
    /**
     * Only these classes; all when empty.
     */
    classes?: Class[];
    /**
     * Only these phases; all when empty.
     */
    phases?: PhaseKind[];
    /**
     * The phase of the line it is for: what usually goes there stands first.
     */
    lineOf?: PhaseKind;
}


/**
 * A photo of a backup.
 */
export class BackupPhoto {
    private constructor();
    free(): void;
    [Symbol.dispose](): void;
    /**
     * The JPEG file.
     */
    readonly bytes: Uint8Array;
    /**
     * When it was taken, in milliseconds since 1970.
     */
    readonly takenAt: number;
}

/**
 * A backup with photos while it is written. Every call hands out the next piece of the file.
 */
export class BackupWriter {
    private constructor();
    free(): void;
    [Symbol.dispose](): void;
    /**
     * Ends the file.
     */
    finish(): Uint8Array;
    /**
     * Adds a photo taken at a moment, in milliseconds since 1970.
     */
    photo(name: string, taken_at: number, bytes: Uint8Array | number[]): Uint8Array;
    /**
     * Adds the records of this device.
     */
    records(): Uint8Array;
}

/**
 * The session of one page.
 */
export class Stillroom {
    free(): void;
    [Symbol.dispose](): void;
    /**
     * Acts, and says what of the view changed.
     *
     * # Errors
     * If `command` is not what its type says.
     */
    apply(command: Command): Update;
    /**
     * Begins a backup with photos, written by the site at an address.
     */
    beginBackup(site: string): BackupWriter;
    /**
     * Says what a line of that recipe means: a material, `own` for one to be described, nothing to have it open again.
     *
     * # Errors
     * Never by what a person did.
     */
    chooseInRecipe(line: number, material: string): RecipeView;
    /**
     * Says that all that was handed out is on the disk, or that it could not be put there.
     *
     * # Errors
     * Never by what a person did.
     */
    committed(is_on_disk: boolean): Update;
    /**
     * What is different between a formula and an earlier version or another formula; nothing if there is no such thing.
     *
     * # Errors
     * Never by what a person did.
     */
    compareVersion(formula: string, version: string): ComparisonView | undefined;
    /**
     * Works the open formula out and checks it anew, and says how much was found. Shows nothing: for measuring.
     */
    countFindings(try_cures: boolean): number;
    /**
     * Tells the session that the desk is there.
     *
     * # Errors
     * Never, but what crosses the seam might fail to.
     */
    deskArrived(): Update;
    /**
     * Puts the backup that was read away: nothing of it is restored.
     */
    forgetBackup(): void;
    /**
     * Whether something is still to be kept.
     */
    hasUnkept(): boolean;
    /**
     * Keeps what is not kept yet. To be called once a change is drawn.
     *
     * # Errors
     * Never by what a person did.
     */
    keep(): Update;
    /**
     * A formula as a link behind the page's address, with its code.
     *
     * # Errors
     * Never by what a person did.
     */
    linkOf(formula: string, address: string, with_notes: boolean): LinkView;
    /**
     * Opens the session, reading what this device keeps, after putting there what a log of earlier pages holds: key,
     * revision and text of each record, as [`take_written`](Self::take_written) hands them out.
     *
     * # Errors
     * If `reader` is not what its type says.
     */
    constructor(reader: Reader, log?: string[] | null);
    /**
     * A photo of the backup that was read, for the page to keep; nothing if it is damaged.
     */
    photoOfBackup(name: string): BackupPhoto | undefined;
    /**
     * Says that the photo handed out last could not be kept.
     */
    photoWasLost(): void;
    /**
     * Looks the open formula up and predicts its pH so many times, and says what it comes to; 0 where it comes to nothing.
     * Shows nothing: for measuring.
     */
    predictPh(times: number): number;
    /**
     * Reads a backup and says what restoring it would do, on a device that has photos of these names. Nothing is put
     * anywhere yet.
     *
     * # Errors
     * Never by what a file holds.
     */
    readBackup(file: Uint8Array, photos_here: string[]): BackupView;
    /**
     * Reads the colour of an entry of the open journal from pixels of the product and of a white beside it: red, green,
     * blue and opacity of each.
     *
     * # Errors
     * Never by what a photo holds.
     */
    readColour(entry: number, sample: Uint8Array | number[], white: Uint8Array | number[]): Update;
    /**
     * A shared formula for a reader who lacks some of its lines. Nothing is kept.
     *
     * # Errors
     * If `lacks` is not what its type says.
     */
    readLinkWithout(link: string, batch: string | null | undefined, lacks: Lacks): ReaderView;
    /**
     * A shared formula for reading, with a batch as typed if the reader wants another. Nothing is kept.
     *
     * # Errors
     * Never by what a link holds.
     */
    readLink(link: string, batch?: string | null): ReadingView;
    /**
     * Reads a table of prices and says what it would change, and line by line what is wrong with it. Nothing is taken in yet.
     *
     * # Errors
     * Never by what a file holds.
     */
    readPrices(bytes: Uint8Array | number[]): PricesView;
    /**
     * Reads the text of a file that holds a recipe.
     *
     * # Errors
     * Never by what a file holds.
     */
    readRecipeFile(bytes: Uint8Array | number[]): RecipeFileView;
    /**
     * Reads a recipe as people write them. Nothing is kept. `meaning` says what numbers without a unit are; empty where the
     * recipe decides.
     *
     * # Errors
     * Never by what a text holds.
     */
    readRecipe(text: string, meaning: 'percent' | 'grams' | 'parts' | ''): RecipeView;
    /**
     * Reads a table of materials and says, line by line, what is wrong with it. Nothing is taken in yet.
     *
     * # Errors
     * Never by what a file holds.
     */
    readTable(bytes: Uint8Array | number[]): TableView;
    /**
     * Checks the open formula if it changed since, and says what changed by it. To be called once a change is drawn.
     *
     * # Errors
     * Never by what a person did.
     */
    rest(): Update;
    /**
     * Materials that answer a query, best first.
     *
     * # Errors
     * If `filter` is not what its type says.
     */
    search(query: string, filter: SearchFilter): MaterialHit[];
    /**
     * Says what a column of that recipe's table holds.
     *
     * # Errors
     * Never by what a person did.
     */
    setRecipeColumn(place: number, holds: string): RecipeView;
    /**
     * Everything there is to show.
     *
     * # Errors
     * Never by what a person did.
     */
    showEverything(): Update;
    /**
     * Looks for the amounts of so many materials of so many substances, drawn by chance, and says how far they are off;
     * less than nothing where there are none. Shows nothing: for measuring.
     */
    solveByChance(materials: number, substances: number, chance: number): number;
    /**
     * Every source a value of the catalogue rests on.
     *
     * # Errors
     * Never by what a person did.
     */
    sources(): SourceView[];
    /**
     * What the maker should know about the storage of this device, a sentence each.
     */
    storageRemarks(): string[];
    /**
     * Which of the photos on this device no batch has any more.
     *
     * # Errors
     * Never by what a person did.
     */
    strayPhotos(photos_here: string[]): StrayPhotos;
    /**
     * What was written since the last time, for a log: key, revision and text of each record; no text where it is gone.
     */
    takeWritten(): string[];
    /**
     * Which lines bring a constituent of the open formula, and how much; nothing of one that is not in it.
     *
     * # Errors
     * Never by what a person did.
     */
    trailOf(constituent: string): TrailView[];
    /**
     * Earlier versions of a formula, last first, and then the other formulas it can be compared with.
     *
     * # Errors
     * Never by what a person did.
     */
    versionsOf(formula: string): VersionView[];
    /**
     * Takes in what lies beyond the main job, once it was fetched, and says what changed by it.
     *
     * # Errors
     * Never by what a person did.
     */
    wholeArrived(): Update;
    /**
     * Everything on this device as one file, written by the site at an address.
     */
    writeBackup(site: string): string;
    /**
     * Prices and stock of what the maker has as a table for a spreadsheet.
     */
    writePrices(): string;
    /**
     * The maker's own materials as a table for a spreadsheet.
     */
    writeTable(): string;
    /**
     * The same with a table of the substitutions that hold for each line.
     */
    writeUpWithSubstitutions(formula: string, form: string): string;
    /**
     * A formula written out as `markdown`, `text` or `csv`; nothing for another form.
     */
    writeUp(formula: string, form: string): string;
}

/**
 * Works out one formula beside any session: its head, lines, jar, constituents and batch. Nothing is kept, and no page
 * is needed. Takes records as they are kept, so materials of the maker's own that the formula uses come along.
 *
 * # Errors
 * If `options` is not what its type says. A record that cannot be read is an error in the update's `answer`.
 */
export function evaluate(formula: string, own_materials: string[], options: EvaluationOptions): Update;

/**
 * Fetches a piece of the seam and calls `done` with whether it came.
 *
 * # Errors
 * If there is no piece of that name.
 */
export function fetchPiece(piece: "desk" | "share" | "whole" | "swap", done: Function): void;

/**
 * Works out the formula of a link beside any session: for a page that embeds it. Nothing is kept.
 *
 * # Errors
 * If `options` is not what its type says. A link that cannot be read is an error in the view.
 */
export function readShared(link: string, options: ReadingOptions): ReadingView;

/**
 * The same for a reader who lacks some of its lines.
 *
 * # Errors
 * If `options` or `lacks` is not what its type says.
 */
export function readSharedWithout(link: string, options: ReadingOptions, lacks: Lacks): ReaderView;

/**
 * Says in which language the page is, by its tag; English where the texts are not written in it. To be said before a session
 * is opened.
 */
export function speak(language: string): void;

/**
 * Takes in the texts of a piece of the seam in the language of the page, as the page fetched them.
 */
export function takeTexts(piece: 'main' | 'share' | 'whole' | 'swap' | 'names' | 'words', texts: string): void;

/**
 * Unpacks the names and compositions of materials. Opening a session does it if nobody did; done before, it is a slice of
 * its own of a page's first moments, in which a hand is heard.
 */
export function unpackMaterials(): void;

/**
 * The version of this build.
 */
export function version(): string;

export type InitInput = RequestInfo | URL | Response | BufferSource | WebAssembly.Module;

export interface InitOutput {
    readonly __wbg_backupphoto_free: (a: number, b: number) => void;
    readonly __wbg_backupwriter_free: (a: number, b: number) => void;
    readonly __wbg_get_backupphoto_bytes: (a: number) => [number, number];
    readonly __wbg_get_backupphoto_takenAt: (a: number) => number;
    readonly __wbg_stillroom_free: (a: number, b: number) => void;
    readonly backupwriter_finish: (a: number) => [number, number];
    readonly backupwriter_photo: (a: number, b: number, c: number, d: number, e: number, f: number) => [number, number];
    readonly backupwriter_records: (a: number) => [number, number];
    readonly evaluate: (a: number, b: number, c: number, d: number, e: any) => [number, number, number];
    readonly fetchPiece: (a: number, b: number, c: any) => [number, number];
    readonly readShared: (a: number, b: number, c: any) => [number, number, number];
    readonly readSharedWithout: (a: number, b: number, c: any, d: any) => [number, number, number];
    readonly speak: (a: number, b: number) => void;
    readonly stillroom_apply: (a: number, b: any) => [number, number, number];
    readonly stillroom_beginBackup: (a: number, b: number, c: number) => number;
    readonly stillroom_chooseInRecipe: (a: number, b: number, c: number, d: number) => [number, number, number];
    readonly stillroom_committed: (a: number, b: number) => [number, number, number];
    readonly stillroom_compareVersion: (a: number, b: number, c: number, d: number, e: number) => [number, number, number];
    readonly stillroom_countFindings: (a: number, b: number) => number;
    readonly stillroom_deskArrived: (a: number) => [number, number, number];
    readonly stillroom_forgetBackup: (a: number) => void;
    readonly stillroom_hasUnkept: (a: number) => number;
    readonly stillroom_keep: (a: number) => [number, number, number];
    readonly stillroom_linkOf: (a: number, b: number, c: number, d: number, e: number, f: number) => [number, number, number];
    readonly stillroom_open: (a: any, b: number, c: number) => [number, number, number];
    readonly stillroom_photoOfBackup: (a: number, b: number, c: number) => number;
    readonly stillroom_photoWasLost: (a: number) => void;
    readonly stillroom_predictPh: (a: number, b: number) => number;
    readonly stillroom_readBackup: (a: number, b: any, c: number, d: number) => [number, number, number];
    readonly stillroom_readColour: (a: number, b: number, c: number, d: number, e: number, f: number) => [number, number, number];
    readonly stillroom_readLink: (a: number, b: number, c: number, d: number, e: number) => [number, number, number];
    readonly stillroom_readLinkWithout: (a: number, b: number, c: number, d: number, e: number, f: any) => [number, number, number];
    readonly stillroom_readPrices: (a: number, b: number, c: number) => [number, number, number];
    readonly stillroom_readRecipe: (a: number, b: number, c: number, d: number, e: number) => [number, number, number];
    readonly stillroom_readRecipeFile: (a: number, b: number, c: number) => [number, number, number];
    readonly stillroom_readTable: (a: number, b: number, c: number) => [number, number, number];
    readonly stillroom_rest: (a: number) => [number, number, number];
    readonly stillroom_search: (a: number, b: number, c: number, d: any) => [number, number, number, number];
    readonly stillroom_setRecipeColumn: (a: number, b: number, c: number, d: number) => [number, number, number];
    readonly stillroom_showEverything: (a: number) => [number, number, number];
    readonly stillroom_solveByChance: (a: number, b: number, c: number, d: number) => number;
    readonly stillroom_sources: (a: number) => [number, number, number, number];
    readonly stillroom_storageRemarks: (a: number) => [number, number];
    readonly stillroom_strayPhotos: (a: number, b: number, c: number) => [number, number, number];
    readonly stillroom_takeWritten: (a: number) => [number, number];
    readonly stillroom_trailOf: (a: number, b: number, c: number) => [number, number, number, number];
    readonly stillroom_versionsOf: (a: number, b: number, c: number) => [number, number, number, number];
    readonly stillroom_wholeArrived: (a: number) => [number, number, number];
    readonly stillroom_writeBackup: (a: number, b: number, c: number) => [number, number];
    readonly stillroom_writePrices: (a: number) => [number, number];
    readonly stillroom_writeTable: (a: number) => [number, number];
    readonly stillroom_writeUp: (a: number, b: number, c: number, d: number, e: number) => [number, number];
    readonly stillroom_writeUpWithSubstitutions: (a: number, b: number, c: number, d: number, e: number) => [number, number];
    readonly takeTexts: (a: number, b: number, c: number, d: number) => void;
    readonly unpackMaterials: () => void;
    readonly version: () => [number, number];
    readonly __indirect_function_table: WebAssembly.Table;
    readonly memory: WebAssembly.Memory;
    readonly __wbindgen_malloc: (a: number, b: number) => number;
    readonly __wbindgen_realloc: (a: number, b: number, c: number, d: number) => number;
    readonly __wbindgen_free: (a: number, b: number, c: number) => void;
    readonly __wbindgen_exn_store: (a: number) => void;
    readonly __externref_table_alloc: () => number;
    readonly __wbindgen_externrefs: WebAssembly.Table;
    readonly __externref_drop_slice: (a: number, b: number) => void;
    readonly __externref_table_dealloc: (a: number) => void;
    readonly __wbindgen_start: () => void;
}

export type SyncInitInput = BufferSource | WebAssembly.Module;

/**
 * Instantiates the given `module`, which can either be bytes or
 * a precompiled `WebAssembly.Module`.
 *
 * @param {{ module: SyncInitInput }} module - Passing `SyncInitInput` directly is deprecated.
 *
 * @returns {InitOutput}
 */
export function initSync(module: { module: SyncInitInput } | SyncInitInput): InitOutput;

/**
 * If `module_or_path` is {RequestInfo} or {URL}, makes a request and
 * for everything else, calls `WebAssembly.instantiate` directly.
 *
 * @param {{ module_or_path: InitInput | Promise<InitInput> }} module_or_path - Passing `InitInput` directly is deprecated.
 *
 * @returns {Promise<InitOutput>}
 */
export default function __wbg_init (module_or_path?: { module_or_path: InitInput | Promise<InitInput> } | InitInput | Promise<InitInput>): Promise<InitOutput>;
