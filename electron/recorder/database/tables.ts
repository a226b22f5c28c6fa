import type { Generated } from 'kysely';

type Flag = 0 | 1;

/** Rows as SQLite keeps them. Row types are turned into records in the feature that owns the table, nowhere else. */
export interface Tables {
  shop: {
    id: number;
    name: string;
    address: string;
    phone: string;
    units: 'metric' | 'us';
    paper: 'a4' | 'us-letter';
    time_zone: string;
    started: Flag;
    person_id: string | null;
    statement_words: string;
  };
  person: { id: string; name: string; trade: string; here: Flag };
  instrument: { id: string; name: string; kind: string; resolution: string; last_check: string | null };
  owner: {
    id: string;
    name: string;
    kind: 'person' | 'company';
    capacity: string;
    place: string | null;
    phone: string | null;
    note: string | null;
  };
  machine: {
    id: string;
    kind: string;
    year: string | null;
    serial: string;
    engine_serial: string | null;
    note: string | null;
    bay: string | null;
    created_at_ms: number;
  };
  ownership: { id: string; machine_id: string; owner_id: string; from_date: string | null; until_date: string | null };
  meter: {
    id: string;
    machine_id: string;
    name: string;
    offset_hours: number;
    from_date: string | null;
    until_date: string | null;
    dead: Flag;
  };
  layout: { id: string; machine_id: string; version: number; layout: string };
  visit: {
    id: string;
    machine_id: string;
    layout_id: string;
    person_id: string | null;
    date: string;
    complaint: string;
    use_road: Flag;
    use_slope: Flag;
    use_people_near: Flag;
    exposure_hours: number;
    conditions: string;
    meter_id: string | null;
    meter_typed: string;
    meter_reading: number | null;
    meter_estimate: Flag;
    current_part: string | null;
    opened_at_ms: number;
    left_at_ms: number | null;
  };
  fitted_part: {
    id: string;
    machine_id: string;
    path: string;
    kind: 'new' | 'used' | 'donor';
    fitted_visit_id: string | null;
    fitted_hours: number | null;
    removed_visit_id: string | null;
    removed_hours: number | null;
  };
  scope_item: {
    id: string;
    visit_id: string;
    path: string;
    position: number;
    not_examined_because: string | null;
    not_applicable_because: string | null;
  };
  original: {
    digest: string;
    byte_length: number;
    media_type: string;
    width: number;
    height: number;
    orientation: number;
    camera: string | null;
    remark: string | null;
  };
  shot: {
    id: string;
    visit_id: string;
    digest: string;
    sequence: number;
    offered_name: string;
    caption: string;
    component: string | null;
    seen_from: string;
    taken_at_ms: number | null;
    taken_zone_min: number | null;
    taken_source: 'camera' | 'camera-corrected' | 'typed' | 'clock' | 'file' | null;
    taken_local: string | null;
    camera: string | null;
    clock_offset_ms: number;
    taken_by: string | null;
    binned: Flag;
  };
  finding: {
    id: string;
    visit_id: string;
    number: number;
    kind: 'condition' | 'observation';
    defect: string | null;
    words: string;
    state: 'confirmed' | 'suspected' | 'not-examined' | 'none-found';
    methods: string;
    quantities: string;
    safety_judged: Flag;
    severity: 1 | 2 | 3 | 4 | null;
    probability: 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | null;
    urgency: 0 | 1 | 2 | 3 | 4 | 5 | null;
    run_worse: Flag | null;
    damage_class: 1 | 2 | 3 | 4 | null;
    facts: string;
    not_examined_because: string | null;
    named_condition_declined_because: string | null;
    if_left: string;
    watch_for: string;
    action: string | null;
    action_words: string;
    do_not_operate: Flag;
    do_not_run: Flag;
    loop_start: Flag;
    found_on: string | null;
    noticed_on: string | null;
    absent_on: string | null;
    track_of: string | null;
    supersedes: string | null;
    superseded_because: string | null;
    moved_before: string | null;
    moved_reason: string | null;
    created_at_ms: number;
    binned: Flag;
  };
  finding_location: { id: string; finding_id: string; position: number; place: string };
  finding_link: {
    id: string;
    from_id: string;
    to_id: string;
    certainty: 'confirmed' | 'suspected';
    joined_by: 'and' | 'or';
    evidence: string;
    shown_by: string;
  };
  calibration: {
    id: string;
    shot_id: string;
    plane: string;
    method: 'known-length' | 'known-circle' | 'known-points';
    body: string;
  };
  mark: {
    id: string;
    shot_id: string;
    finding_id: string | null;
    shape: 'point' | 'line' | 'path' | 'area' | 'arrow' | 'span';
    points: string;
    role: 'finding' | 'calibration' | 'matching' | 'note';
    origin: string;
    calibration_id: string | null;
    tag_x: number | null;
    tag_y: number | null;
    note: string;
  };
  reading: {
    id: string;
    visit_id: string;
    sheet: string;
    sheet_version: number;
    place: string;
    inputs: string;
    conditions: string;
    remark: string;
    not_taken_because: string | null;
    instrument_id: string | null;
    taken_at_ms: number;
    results: string;
    limits: string;
    taken_over: string;
  };
  remembered_limit: { id: string; machine_id: string; sheet: string; result: string; typed: string };
  proof: { id: string; finding_id: string; shot_id: string | null; reading_id: string | null };
  reading_shot: { id: string; reading_id: string; shot_id: string };
  report: {
    id: string;
    visit_id: string;
    number: number;
    revision: number;
    issued_at_ms: number;
    record: string;
    record_digest: string;
    pdf_digest: string;
  };
  suspicion: {
    id: string;
    visit_id: string;
    what: string;
    place: string | null;
    closed_because: string | null;
    created_at_ms: number;
    defect: string | null;
  };
  suspicion_turn: {
    id: string;
    suspicion_id: string;
    position: number;
    turn: 'given-up' | 'taken-up' | 'found';
    finding_id: string | null;
    because: string;
    at_ms: number | null;
  };
  suspicion_evidence: {
    id: string;
    suspicion_id: string;
    position: number;
    finding_id: string | null;
    reading_id: string | null;
    bears: 'for' | 'against' | 'cannot tell';
    because: string;
    at_ms: number | null;
  };
  earlier_work: {
    id: string;
    visit_id: string;
    position: number;
    what: string;
    place: string | null;
    did: string;
    by_whom: string;
    when_done: string;
  };
  fluid_received: { id: string; visit_id: string; fluid: string; level: string; look: string; added: string };
  arrival_photo: { id: string; visit_id: string; view: string; shot_id: string };
  visit_step: { id: string; visit_id: string; position: number; step: string; place: string | null };
  visit_money: { id: string; currency: string; tax_percent: string | null };
  choice: {
    id: string;
    visit_id: string;
    position: number;
    name: string;
    conditions: string;
    hold_points: string;
  };
  disposition: {
    id: string;
    choice_id: string;
    finding_id: string;
    what: 'fixed' | 'partly' | 'left' | 'made-safe' | 'unknown';
    after: string | null;
    why: string;
  };
  choice_step: { id: string; choice_id: string; position: number; step: string; place: string | null };
  cost_line: {
    id: string;
    choice_id: string;
    position: number;
    kind: 'parts' | 'labour' | 'outside' | 'contingency';
    words: string;
    amount: string;
    price: string;
  };
  decision: {
    id: string;
    visit_id: string;
    finding_id: string | null;
    choice_id: string | null;
    decision: 'accepted' | 'accepted-with-changes' | 'declined' | 'deferred' | 'refused-by-mechanic';
    completed: string;
    words: string;
    decided_by: string;
    capacity: string;
    how_told: string;
    shown_shots: string;
    statement: string;
    signature: string | null;
    unsigned_because: string;
    told: string;
    decided_at_ms: number;
    zone_offset_min: number;
    person_id: string | null;
  };
  return_answer: {
    id: string;
    visit_id: string;
    finding_id: string;
    answer: 'same' | 'grown' | 'smaller' | 'repaired-holds' | 'repaired-failed' | 'not-re-examined' | 'part-replaced';
    because: string;
    fitted_part_id: string | null;
    answered_at_ms: number;
  };
  work_item: {
    id: string;
    visit_id: string;
    position: number;
    finding_id: string | null;
    words: string;
    outcome: 'done' | 'partly' | 'not-done';
    because: string;
    written_at_ms: number;
  };
  work_part: {
    id: string;
    work_item_id: string;
    position: number;
    words: string;
    amount: string;
    fitted_part_id: string | null;
  };
  work_proof: { id: string; work_item_id: string; reading_id: string | null; shot_id: string | null };
  hand_over: {
    id: string;
    proved: string;
    limits: string;
    watch: string;
    come_back: string;
    old_parts: string;
    handed_to: string;
  };
  search_document: {
    rowid: Generated<number>;
    record: string;
    kind: 'machine' | 'visit' | 'finding';
    machine_id: string;
    visit_id: string | null;
    finding_id: string | null;
  };
  comparison: { id: string; shot_id: string; earlier_shot_id: string; pairs: string };
  journal: {
    seq: number;
    step_id: string;
    at_ms: number;
    zone_offset_min: number;
    person_id: string | null;
    window_id: string;
    visit_id: string | null;
    machine_id: string | null;
    operation: string;
    undoable: Flag;
    reverses: string | null;
    changes: string;
    previous_digest: string;
    digest: string;
  };
}

export type TableName = keyof Tables;
/** Tables a mutation may write; the journal writes itself, the search follows. */
export type RecordTable = Exclude<TableName, 'journal' | 'search_document'>;

/** The column that names a row. */
export const keyColumn = (table: RecordTable): 'id' | 'digest' => (table === 'original' ? 'digest' : 'id');

/**
 * Personal rows: the journal holds their digests only. An issued report's frozen record names its owner too, and a decision
 * who decided, in whose words and with whose hand.
 */
export const personalTables: ReadonlySet<RecordTable> = new Set(['owner', 'report', 'decision']);
