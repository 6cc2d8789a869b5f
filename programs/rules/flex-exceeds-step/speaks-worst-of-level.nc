%
O1 (of the cuts of a level the heaviest counts)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F89.2 ; expect flex-exceeds-step error: the tool's flex changes the step of 4 µm by 2.111 µm (1.321 to 3.292), allowed 1.32 µm && a neck 4.746 mm long or shorter, or a lower force && lower level: floor 2.111 µm (1.321 to 3.292) too deep (tool 3, 2 flutes, depth 4 µm: largest chip 1.487 µm × chip width 0.004 mm × specific force 14260 MPa × 1.6 = force 0.1357 N (0.0848 to 0.212); for chips below 10 µm the formula is taken × 1, typically 1.6, at most 2.5 (our choice, no source)) && allowed is limits.flex_share 0.33 of the step
G0 Z1.
X-3. Y0.3
Z-0.004
G1 X3. F20.
G0 Z1.
M5
M30
%
