// What a hidden machine has besides its bore, its rod and its air, part by part. Null where the job has nothing to do with it. Sizes
// are those at 20 degC, in metres; pressures over the air outside, Pa.

/** New rings on a piston at the bench. */
export interface RingTruth {
  readonly sideLeastM: number
  readonly sideMostM: number
  readonly radialMostM: number
  readonly radialLeastM: number
  /** Shallowest groove. */
  readonly grooveM: number
  readonly light: 'dark' | 'near_joint' | 'light'
  /** What is stamped on the set, against what the book has. */
  readonly material: string
  readonly isRightSet: boolean
}

/** The piston of that bench. */
export interface FitTruth {
  /** Across the lands, from top to bottom and from side to side. */
  readonly verticalM: number
  readonly horizontalM: number
  /** Whole swing of a dial on each face. */
  readonly headFaceM: number
  readonly crankFaceM: number
  /** Null: the piston itself runs on the oil. */
  readonly riders: { readonly acrossM: number; readonly proudM: number } | null
}

/** The rings that go in, in the least worn place of the bore. */
export interface GapTruth {
  readonly leastM: number
  readonly mostM: number
}

/** Oil to the bore. */
export interface FeedTruth {
  readonly hole: 'clear' | 'slow' | 'shut'
  readonly checkValve: 'holds' | 'passes'
  readonly lubricator: 'right' | 'short' | 'flooded'
}

/** A piston that may be hollow. */
export interface CavityTruth {
  readonly isHollow: boolean
  /** What record, tag and drawing say of it together. */
  readonly written: 'hollow' | 'solid' | 'silent'
  /** Weighed without rod, nut and rings, and the same size in solid metal, kg. */
  readonly weighedKg: number
  readonly solidKg: number
  /** What may be left of it by scale, sizes and metal together, as a share. */
  readonly ratioU: number
  readonly plugs: 'found' | 'none'
  readonly knock: 'rings' | 'dull'
  /** `none`: there is no hole to probe. */
  readonly vents: 'silent' | 'hissed' | 'blocked' | 'none'
  /** Over the air outside, Pa; what one cavity still holds. */
  readonly pressurePa: number
  /** It hisses again during a wait. */
  readonly hissesLate: boolean
  readonly plug: 'one_turn' | 'hissed' | 'seized' | 'spins'
  /** A plug has to come off, as the book has it. */
  readonly isOpened: boolean
  /** Both plug faces look at the wall. */
  readonly isAimed: boolean
  /** How much warmer it is than the shop, K. */
  readonly overShopK: number
}

/** The closed cylinder, end by end. */
export interface EndTruth {
  /** On the low-range gauge, vents open. */
  readonly pressurePa: number
  /** How fast it climbs with the vent shut, Pa per second. */
  readonly risePaPerS: number
}

export interface ClosedTruth {
  readonly head: EndTruth
  readonly crank: EndTruth
}

/** A machine on load and its pocket. Settings are shares of its travel, 0 shut to 1 full open. */
export interface PocketTruth {
  readonly fitted: 'hand_wheel' | 'two_position'
  /** What its hand-wheel and what its stem tells. */
  readonly wheel: number
  readonly stem: number
  /** First suction and last discharge. */
  readonly suctionPa: number
  readonly dischargePa: number
  /** Stage by stage. */
  readonly suctionK: readonly number[]
  readonly loadW: number
  /** What the lead has ordered. */
  readonly ordered: number
}

/** A piston on its rod at the bench. */
export interface NutTruth {
  readonly contact: 'enough' | 'less'
  readonly isRightCompound: boolean
  /** The way of the machine's book. */
  readonly method: 'torque' | 'angle' | 'stretch'
  /** At which it moved last, N m; what it was turned from snug, rad; how much longer the rod is, metres. */
  readonly torqueNm: number
  readonly snugNm: number
  readonly angleRad: number
  readonly stretchM: number
  /** Rod end below its face, slack. */
  readonly endBeforeM: number
  /** Nothing moved while it was left alone. */
  readonly isBedded: boolean
  readonly recess: 'below' | 'proud'
  /** Tag with every cavity and two signatures. */
  readonly isProved: boolean
  readonly isVentShut: boolean
  /** The blocks take the rod on its packing run. */
  readonly isOnRun: boolean
}

/** A piston put back in its cylinder. */
export interface SetTruth {
  /** Running clearances, with what carries them lying on the bottom. */
  readonly pistonM: number
  readonly crossheadM: number
  readonly headM: number
  readonly crankM: number
  /** What the top dial should read by geometry, and what the dials read, signed. */
  readonly expectedM: number
  readonly upM: number
  readonly asideM: number
  readonly returnM: number
  /** By nut, as the procedure has them, N m. */
  readonly nutsNm: readonly number[]
  readonly rings: 'right' | 'tight' | 'marked'
  readonly turned: 'by_hand' | 'tight'
  readonly isCounted: boolean
  readonly areEndsOpen: boolean
}

/** A cylinder that is opened. */
export interface OpenTruth {
  /** Where the clearance pocket sits. */
  readonly pocketEnd: 'head' | 'crank' | 'none'
  readonly water: 'clear' | 'bubbles' | 'oil'
  readonly isDry: boolean
  /** How much warmer the jacket is than the shop, K. */
  readonly jacketOverK: number
  readonly isPocketEmpty: boolean
  /** Gas behind a valve cover. */
  readonly hisses: boolean
  readonly inside: 'clean' | 'pieces' | 'black_dust' | 'water'
}

export interface Parts {
  readonly rings: RingTruth | null
  readonly fit: FitTruth | null
  readonly gap: GapTruth | null
  readonly feed: FeedTruth | null
  readonly cavity: CavityTruth | null
  readonly closed: ClosedTruth | null
  readonly pocket: PocketTruth | null
  readonly nut: NutTruth | null
  readonly set: SetTruth | null
  readonly opened: OpenTruth | null
}
