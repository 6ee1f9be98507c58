// One example to key for each computation; a test works every one of them out. All figures invented.

import { MECHANICAL_EXAMPLES } from './mechanical-examples.ts'

const PRESSURES = ['suction=60 psig', 'discharge=180 psig', 'barometer=14.2 psia']

/** One stage, single cylinder, with more load on the driver than its rating. */
const MACHINE = [
  ...['stages=1', 'stroke=10 in', 'con_rod=25 in', 'speed=360 rpm', ...PRESSURES],
  ...['form=ideal', 'mechanical_efficiency=95 %', 'friction=constant'],
  ...['bores=12 in', 'rods=2.5 in', 'clearance_head=12 %', 'clearance_crank=14 %'],
  ...['suction_temperatures=80 degF', 'ks=1.27', 'z_suctions=0.98', 'z_discharges=0.96'],
  ...['compression_efficiencies=85 %', 'suction_drops=2 %', 'discharge_rises=2 %', 'masses=450 lb'],
  ...['compression_limits=30000 lbf', 'tension_limits=30000 lbf', 'pin_limits=40000 lbf'],
  'temperature_limits=300 degF',
]
const POCKET = [
  ...['driver_rating=150 hp', 'margin=3 %', 'measured_load=168 hp', 'agreement=10 %'],
  ...['least_angle=15 deg', 'least_share=3 %', 'least_efficiency=30 %'],
  ...['pocket_stage=1', 'pocket_ends=head', 'pocket_kind=variable', 'pocket_volume=40 in3'],
  ...['pocket_opening=0 %', 'pocket_turns=12', 'pocket_step=0.25'],
]

export const EXAMPLES: Readonly<Record<string, readonly string[]>> = {
  ...MECHANICAL_EXAMPLES,
  repeats: ['readings=9.5012 9.5014 9.5013 9.5013 9.5012 9.5013 9.5031 in', 'resolution=0.0001 in'],
  'pooled-repeats': [
    'readings=9.5033 9.5034 9.5021 9.5020 9.5068 9.5069 9.5034 9.5038 9.5035 9.5027 9.5027 9.5018 9.5019 in',
    'counts=2 2 2 3 2 2',
    'resolution=0.0001 in',
  ],
  difference: ['a=9.5062 in', 'b=9.5001 in', 'a_u=0.0003 in', 'b_u=0.0003 in'],
  'size-at-20c': [
    'reading=10.0020 in',
    'part_temp=95 degF',
    'instrument_temp=86 degF',
    'part_alpha=10.8',
    'instrument_alpha=11.5',
  ],
  'reading-error': [
    'instrument_u=0.0002 in',
    'instrument_k=2',
    'size=9.5 in',
    'part_alpha=10.8',
    'instrument_alpha=11.5',
    'part_temp_u=2 delta-degF',
    'instrument_temp_u=2 delta-degF',
    'resolution=0.0001 in',
    'resolution_in_u=no',
    'readings=9.5012 9.5014 9.5013 in',
  ],
  'error-budget': ['components=2.5 1.2 0.8 um', 'dof=18 5 100000'],
  'coverage-factor': ['dof=16', 'level=0.99'],
  conformance: ['value=9.5092 in', 'u=0.0003 in', 'k=2', 'upper=9.5095 in'],
  'guard-band': ['limit=0.0095 in', 'bound=at-most', 'u=0.0003 in', 'k=2'],
  'wear-rate': [
    'readings=9.5000 9.5031 in',
    'hours=0 8200 h',
    'u=0.0003 in',
    'wears=larger',
    'renewed=nothing',
  ],
  'hours-left': [
    'readings=9.5000 9.5022 9.5043 9.5061 in',
    'hours=0 8100 16300 24000 h',
    'u=0.0003 in',
    'wears=larger',
    'renewed=nothing',
    'limits=9.5095 in',
    'first_set=no',
  ],
  displacement: ['bore=12 in', 'rod=2.5 in', 'stroke=10 in', 'speed=360 rpm'],
  clearance: ['parts=45 60 30 in3', 'swept=1131 in3'],
  'volumetric-efficiency': [
    'form=ideal',
    'clearance=12 %',
    ...PRESSURES,
    'k=1.27',
    'z_suction=0.98',
    'z_discharge=0.96',
  ],
  capacity: [
    'efficiency=76 %',
    'displacement=460 cfm',
    'suction=60 psig',
    'barometer=14.2 psia',
    'suction_temperature=80 degF',
    'z_suction=0.98',
    'base_pressure=14.696 psia',
    'base_temperature=60 degF',
    'base_z=1',
  ],
  'indicated-power': [
    ...PRESSURES,
    'capacity=350 cfm',
    'k=1.27',
    'z_suction=0.98',
    'z_discharge=0.96',
    'compression_efficiency=85 %',
    'mechanical_efficiency=95 %',
  ],
  'discharge-temperature': ['suction_temperature=80 degF', ...PRESSURES, 'k=1.27'],
  'rod-load': ['bore=12 in', 'rod=2.5 in', ...PRESSURES],
  'rod-reversal': [
    ...['bore=12 in', 'rod=2.5 in', 'stroke=10 in', 'con_rod=25 in', 'speed=360 rpm'],
    ...PRESSURES,
    ...['k=1.27', 'clearance_head=12 %', 'clearance_crank=14 %'],
    ...['mass=450 lb', 'least_angle=15 deg', 'least_share=3 %'],
  ],
  'slider-crank': ['stroke=10 in', 'con_rod=25 in', 'speed=360 rpm', 'angle=60 deg'],
  'pv-cycle': [
    'swept=1131 in3',
    'clearance=12 %',
    ...PRESSURES,
    'n_compression=1.27',
    'n_expansion=1.27',
    'steps=8',
  ],
  'pocket-curve': [...MACHINE, ...POCKET, 'steps=5'],
  'pocket-setting': [...MACHINE, ...POCKET],
}
