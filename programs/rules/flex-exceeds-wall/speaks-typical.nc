%
O1 (the typical value just fails)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F3. ; expect flex-exceeds-wall warning: allowed 3.3 µm && a neck 5.983 mm long or shorter, a lower force, or a last pass at a thin strip && tool 3, 2 flutes, depth 4 µm: largest chip 0.05 µm × chip width 0.004 mm × specific force 33300 MPa × 1.6 = force 0.01066 N (0.00666 to 0.01665); for chips below 10 µm the formula is taken × 1, typically 1.6, at most 2.5 (our choice, no source) && allowed is limits.flex_share 0.33 of job.wall_tolerance ±10 µm
G0 Z1.
M5
M30
%
