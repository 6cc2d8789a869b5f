%
O1 (the typical value just fails)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F47.7 ; expect flex-exceeds-step warning: a neck 5.999 mm long or shorter, or a lower force && lower level: floor 1.32 µm (0.8258 to 2.059) too deep (tool 3, 2 flutes, depth 4 µm: largest chip 0.795 µm × chip width 0.004 mm × specific force 16680 MPa × 1.6 = force 0.08484 N (0.05303 to 0.1326); for chips below 10 µm the formula is taken × 1, typically 1.6, at most 2.5 (our choice, no source)) && allowed is limits.flex_share 0.33 of the step
G0 Z1.
M5
M30
%
