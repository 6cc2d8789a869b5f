%
O1 (along the wall of a slot, with it and against it)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F2.9
Y0.1
X-3. F30. ; expect flex-exceeds-wall error: the tool flexes sideways by 16.8 µm (10.5 to 26.24), allowed 3.3 µm; climb: stock is left && tool 3, 2 flutes, depth 4 µm: largest chip 0.433 µm × chip width 0.004 mm × specific force 19410 MPa × 1.6 = force 0.05379 N (0.03362 to 0.08405); for chips below 10 µm the formula is taken × 1, typically 1.6, at most 2.5 (our choice, no source) && allowed is limits.flex_share 0.33 of job.wall_tolerance ±10 µm && a neck 3.487 mm long or shorter, a lower force, or a last pass at a thin strip
G0 Z1.
M5
M30
%
