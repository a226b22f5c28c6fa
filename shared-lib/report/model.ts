import type { Tier } from '../contract/standing.ts';
import type { FindingState } from '../model/finding.ts';
import type { BarDrawing } from '../readings/limit-bar-drawing.ts';

/** The stamped tag. Tier is null where nothing is ranked: none found, or an observation. */
export interface ReportTag {
  readonly findingId: string;
  readonly number: number;
  readonly tier: Tier | null;
  readonly state: FindingState | 'observation';
}

/** A signature as it was drawn, in mm from its box's upper left corner. */
export interface PrintedSignature {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly strokes: readonly (readonly PrintedPoint[])[];
  /** For a reader who cannot see it. */
  readonly alternative: string;
}

/** Words beside a value; several paragraphs are several entries. */
export interface ReportRow {
  readonly label: string;
  readonly paragraphs: readonly string[];
  readonly signature?: PrintedSignature;
}

/** A point on a photo as printed, in mm from the frame's upper left corner. */
export type PrintedPoint = readonly [xMm: number, yMm: number];

export interface PrintedStroke {
  readonly points: readonly PrintedPoint[];
  readonly closed: boolean;
  readonly dashed: boolean;
  /** A stretch where the tracer was not sure. */
  readonly dotted?: boolean;
  /** A mark of an earlier photo, carried over: thin and dotted. */
  readonly ghost?: boolean;
}

/** A known length drawn in the picture; `at` is the upper left corner of its plate. */
export interface PrintedScaleBar {
  readonly text: string;
  readonly widthMm: number;
  readonly at: PrintedPoint;
}

/** A tag on a photo: its middle, and the point of the mark its leader runs to (null where the tag touches the mark). */
export interface PrintedTag {
  readonly tag: ReportTag;
  readonly at: PrintedPoint;
  readonly leaderTo: PrintedPoint | null;
}

/** One photo as it stands on a page. All geometry is in mm on paper. */
export interface ReportPhoto {
  readonly digest: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** The whole picture, placed so that the frame shows the wanted part of it. */
  readonly picture: { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly heightMm: number };
  /** Width of marks and tags against their full size. */
  readonly markScale: number;
  readonly strokes: readonly PrintedStroke[];
  readonly tags: readonly PrintedTag[];
  /** Null where no mark on it is measured. */
  readonly scaleBar: PrintedScaleBar | null;
  readonly caption: string;
  /** For a reader who cannot see it. */
  readonly alternative: string;
  /** Stands in the frame when the file is not there. */
  readonly missing: string;
}

export interface PageOneItem {
  readonly tag: ReportTag;
  readonly title: string;
  readonly sentence: string;
  readonly state: string;
  readonly photo: ReportPhoto | null;
  readonly noPhoto: string;
}

export interface PageOneSection {
  readonly kind: 'page-one';
  readonly plate: { readonly kind: string; readonly fields: readonly { label: string; value: string; unit: string }[] };
  readonly heading: string;
  readonly headLines: readonly string[];
  readonly statement: string;
  readonly statementTags: readonly ReportTag[];
  readonly worstTier: Tier | null;
  readonly items: readonly PageOneItem[];
  readonly rows: readonly ReportRow[];
}

export interface RowsSection {
  readonly kind: 'rows';
  readonly heading: string;
  /** It begins a page: it goes from hand to hand. */
  readonly ownPage?: true;
  readonly intro: string;
  readonly rows: readonly ReportRow[];
  /** Spoken in italics: somebody else's words. */
  readonly quoted: readonly string[];
}

export interface SummaryLine {
  readonly tag: ReportTag;
  readonly title: string;
  readonly place: string;
  readonly tier: string;
  readonly certainty: string;
  readonly action: string;
  readonly hasDetail: boolean;
}

export interface SummarySection {
  readonly kind: 'summary';
  readonly heading: string;
  readonly columns: readonly string[];
  readonly lines: readonly SummaryLine[];
  readonly unrankedHeading: string;
  readonly unrankedColumns: readonly string[];
  readonly unranked: readonly SummaryLine[];
  readonly note: string;
  readonly empty: string;
}

/** An earlier photo beside today's, each cut to the same part, and what they tell. */
export interface ComparedPhotos {
  readonly heading: string;
  readonly photos: readonly ReportPhoto[];
  readonly words: readonly string[];
}

export interface FindingBlock {
  readonly tag: ReportTag;
  readonly title: string;
  readonly place: string;
  readonly tier: string;
  readonly order: string;
  /** Set large across the page where it must be seen, or small beside the words. */
  readonly layout: 'wide' | 'beside';
  readonly photos: readonly ReportPhoto[];
  readonly rows: readonly ReportRow[];
  readonly compared: readonly ComparedPhotos[];
}

export interface FindingsSection {
  readonly kind: 'findings';
  readonly heading: string;
  readonly blocks: readonly FindingBlock[];
}

export interface ReadingLine {
  readonly what: string;
  /** What it is computed from what, and by which standard; empty for a reading that was written down as it was. */
  readonly how: string;
  readonly value: string;
  readonly limit: string;
  readonly source: string;
  readonly verdict: string;
  /** How heavily the verdict is set: beyond solid, watch heavy, the rest plain. */
  readonly weight: 'solid' | 'heavy' | 'dashed' | 'plain';
}

/** A line of the table, with its bars on the scale of its limit: the same drawing as in the window. */
export interface JudgedLine extends ReadingLine {
  readonly bars: readonly BarDrawing[];
}

export interface ReadingBlock {
  readonly sheet: string;
  readonly place: string;
  readonly lines: readonly JudgedLine[];
  /** The numbers as a picture, the same as on the screen; null where there is none. */
  readonly plot: ({ readonly title: string } & Pick<DiagramBlock, 'width' | 'height' | 'lines'>) | null;
  /** What the numbers point to and what they cannot say. */
  readonly says: readonly string[];
  readonly notes: readonly string[];
}

export interface ReadingsSection {
  readonly kind: 'readings';
  readonly heading: string;
  readonly columns: readonly string[];
  /** Of every bar, and where on it every limit stands. */
  readonly barWidth: number;
  readonly limitAt: number;
  readonly blocks: readonly ReadingBlock[];
  readonly note: string;
}

export interface CoverageSection {
  readonly kind: 'coverage';
  readonly heading: string;
  readonly line: string;
  readonly columns: readonly string[];
  readonly items: readonly {
    readonly item: string;
    readonly state: string;
    readonly because: string;
    readonly examined: boolean;
  }[];
  readonly methodsHeading: string;
  readonly methods: readonly ReportRow[];
  readonly limits: readonly string[];
}

export interface PhotoIndexSection {
  readonly kind: 'photo-index';
  readonly heading: string;
  readonly columns: readonly string[];
  readonly lines: readonly {
    readonly number: string;
    readonly time: string;
    readonly part: string;
    readonly takenBy: string;
    readonly marks: string;
    readonly digest: string;
  }[];
  readonly note: string;
}

export interface IdentitySection {
  readonly kind: 'identity';
  readonly heading: string;
  readonly disclaimer: readonly string[];
  readonly rows: readonly ReportRow[];
}

export interface CautionsSection {
  readonly kind: 'cautions';
  readonly heading: string;
  readonly panels: readonly {
    readonly word: 'DANGER' | 'WARNING' | 'CAUTION' | 'NOTICE';
    readonly text: string;
    readonly because: string;
  }[];
}

/** A point of a drawing, in its own steps of a CSS pixel. */
type DrawnPoint = readonly [x: number, y: number];

export interface DiagramBlock {
  readonly title: string;
  readonly notes: readonly string[];
  readonly width: number;
  readonly height: number;
  readonly lines: readonly (
    | { readonly kind: 'circle'; readonly centre: DrawnPoint; readonly radius: number; readonly weight: string }
    | {
        readonly kind: 'path';
        readonly points: readonly DrawnPoint[];
        readonly closed: boolean;
        readonly weight: string;
        readonly dashed: boolean;
      }
    | {
        readonly kind: 'label';
        readonly at: DrawnPoint;
        readonly text: string;
        readonly anchor: string;
        readonly weight: string;
      }
  )[];
  /** Where the findings are: extents, and places that are a point. */
  readonly strokes: readonly (readonly DrawnPoint[])[];
  readonly dots: readonly DrawnPoint[];
  /** Tags by their upper left corner, with their leaders. */
  readonly tags: readonly {
    readonly tag: ReportTag;
    readonly at: DrawnPoint;
    readonly height: number;
    readonly leadersTo: readonly (readonly [from: DrawnPoint, to: DrawnPoint])[];
  }[];
  /** The same in words: each tag and its places. */
  readonly legend: readonly { readonly tag: ReportTag; readonly words: string }[];
}

/** A chain of causes: told, drawn, and link by link with what it rests on. */
export interface ChainsSection {
  readonly kind: 'chains';
  readonly heading: string;
  readonly note: string;
  readonly columns: readonly string[];
  readonly stories: readonly {
    readonly told: readonly string[];
    readonly drawing: DiagramBlock;
    readonly links: readonly { readonly link: string; readonly sure: string; readonly restsOn: string }[];
  }[];
}

/** Possible causes across, what speaks for or against them downwards; and what became of each. */
export interface SuspicionsSection {
  readonly kind: 'suspicions';
  readonly heading: string;
  readonly note: string;
  /** As many tables as the paper's width asks for. */
  readonly tables: readonly {
    readonly columns: readonly {
      readonly what: string;
      readonly where: string;
      readonly state: string;
      readonly isOver: boolean;
    }[];
    readonly lines: readonly {
      readonly evidence: string;
      readonly said: string;
      readonly cells: readonly {
        /** Empty where it was not held against it. */
        readonly bears: '' | 'for' | 'against' | 'cannot tell';
        readonly because: string;
      }[];
    }[];
  }[];
  readonly historyHeading: string;
  readonly history: readonly ReportRow[];
}

export interface DiagramsSection {
  readonly kind: 'diagrams';
  readonly heading: string;
  /** Which end cylinders are counted from, and which way left and right are meant. */
  readonly numbering: string;
  readonly blocks: readonly DiagramBlock[];
}

export interface SinceSection {
  readonly kind: 'since';
  readonly heading: string;
  readonly intro: string;
  readonly columns: readonly string[];
  readonly lines: readonly {
    readonly tag: ReportTag;
    readonly title: string;
    readonly before: readonly string[];
    readonly now: readonly string[];
    /** What has changed for the worse is set heavier. */
    readonly changes: readonly { readonly words: string; readonly isWorse: boolean }[];
  }[];
  readonly readingsHeading: string;
  readonly readingColumns: readonly string[];
  readonly readings: readonly {
    readonly what: string;
    readonly before: string;
    readonly now: string;
    readonly change: string;
    readonly isWorse: boolean;
  }[];
}

/** A section is one file here and one file in `assets/report/sections`. What comes later is absent, never empty. */
export type ReportSection =
  | PageOneSection
  | CautionsSection
  | RowsSection
  | SinceSection
  | SummarySection
  | ChainsSection
  | SuspicionsSection
  | DiagramsSection
  | FindingsSection
  | ReadingsSection
  | CoverageSection
  | PhotoIndexSection
  | IdentitySection;

/** A condition report as plain data: every word composed, every mark placed; only the page breaks are the typesetter's. */
export interface Report {
  readonly language: 'en';
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  /** Day of the report in the shop's zone. */
  readonly date: { readonly year: number; readonly month: number; readonly day: number };
  readonly runningHead: string;
  /** Stands on every page of a draft. */
  readonly draftMark: string | null;
  readonly footLeft: string;
  readonly footMiddle: string;
  /** `page {page} of {pages}` */
  readonly footRight: string;
  readonly sections: readonly ReportSection[];
  readonly record: { readonly name: string; readonly description: string; readonly json: string };
}
