// One example of each cycle computation as it would be keyed. All figures invented; the pocket ones are TC-401's.

const CYLINDER = ['bore=9.5 in', 'rod=2.25 in']
const PRESSURES = ['suction=60 psig', 'discharge=185 psig', 'barometer=14.7 psia']
const IDEAL_Z = ['z_suction=1', 'z_discharge=1']

const MACHINE = [
  ...['stages=2', 'stroke=11 in', 'con_rod=27.5 in', 'speed=400 rpm', 'barometer=14.7 psia'],
  ...['suction=60 psig', 'discharge=520 psig', 'form=96-less-ratio'],
  ...['mechanical_efficiency=95 %', 'friction=in-proportion'],
  ...['bores=9.5 6.25 in', 'rods=2.25 2.25 in', 'clearance_head=14 16 %', 'clearance_crank=15 18 %'],
  ...['suction_temperatures=80 110 degF', 'ks=1.27 1.27', 'z_suctions=0.97 0.97', 'z_discharges=0.97 0.97'],
  ...['compression_efficiencies=83 83 %', 'suction_drops=0 0 %', 'discharge_rises=0 0 %'],
  ...['masses=265 265 lb', 'compression_limits=18000 18000 lbf', 'tension_limits=18000 18000 lbf'],
  ...['pin_limits=20000 20000 lbf', 'temperature_limits=300 300 degF'],
  ...['cooler_drops=2.5 %', 'passed_on=100 %'],
  ...['driver_rating=250 hp', 'margin=5 %', 'measured_load=252 hp', 'agreement=5 %'],
  ...['least_angle=15 deg', 'least_share=3 %', 'least_efficiency=30 %'],
  ...['pocket_stage=1', 'pocket_ends=head', 'pocket_kind=variable', 'pocket_volume=2 in3'],
  ...['pocket_opening=0 %', 'pocket_turns=100', 'pocket_step=0.25'],
]

export const SAMPLE_INPUTS: Readonly<Record<string, readonly string[]>> = {
  displacement: [...CYLINDER, 'stroke=11 in', 'speed=400 rpm'],
  clearance: ['parts=20 62 27 in3', 'swept=779.7 in3'],
  'volumetric-efficiency': ['form=96-less-ratio', 'clearance=14 %', ...PRESSURES, 'k=1.27', ...IDEAL_Z],
  capacity: [
    ...['efficiency=76 %', 'displacement=350.8 cfm', 'suction=60 psig', 'barometer=14.7 psia'],
    ...['suction_temperature=80 degF', 'z_suction=0.97'],
    ...['base_pressure=14.696 psia', 'base_temperature=60 degF', 'base_z=1'],
  ],
  'indicated-power': [
    ...[...PRESSURES, 'capacity=268 cfm', 'k=1.27', ...IDEAL_Z],
    ...['compression_efficiency=83 %', 'mechanical_efficiency=95 %'],
  ],
  'discharge-temperature': ['suction_temperature=80 degF', ...PRESSURES, 'k=1.27'],
  'rod-load': [...CYLINDER, ...PRESSURES],
  'rod-reversal': [
    ...[...CYLINDER, 'stroke=11 in', 'con_rod=27.5 in', 'speed=400 rpm', ...PRESSURES, 'k=1.27'],
    ...[
      'clearance_head=14 %',
      'clearance_crank=15 %',
      'mass=265 lb',
      'least_angle=15 deg',
      'least_share=3 %',
    ],
  ],
  'slider-crank': ['stroke=11 in', 'con_rod=27.5 in', 'speed=400 rpm', 'angle=60 deg'],
  'pv-cycle': [
    ...['swept=779.7 in3', 'clearance=14 %', ...PRESSURES],
    ...['n_compression=1.27', 'n_expansion=1.27', 'steps=20'],
  ],
  'pocket-curve': [...MACHINE, 'steps=4'],
  'pocket-setting': MACHINE,
}
