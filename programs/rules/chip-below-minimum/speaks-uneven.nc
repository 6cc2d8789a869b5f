%
O1 (along a wall that the path leaves at an angle: the field tells the widest cut)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F300.
G0 Z1.
X-3. Y0.01
Z-0.02
G1 X3. Y0.04 F40. ; expect chip-below-minimum error: largest chip 0.3951 µm, minimum 0.45 µm (0.3 × edge radius 1.5 µm) && tool 3, 2 flutes: feed per tooth 40 mm/min / (30000 rpm × 2) = 0.6667 µm && uneven width of cut, at its largest: the chip reaches 0.5927 of the feed per tooth && edge radius from tools.3.edge_radius, ratio from material.minimum_chip_ratio && F46 or more at this speed makes a chip | expect feed-below-edge-radius warning: feed per tooth 0.6667 µm, edge radius 1.5 µm && tool 3, 2 flutes: feed per tooth 40 mm/min / (30000 rpm × 2) = 0.6667 µm && edge radius from tools.3.edge_radius && F90 or more at this speed, or a sharper edge
G0 Z1.
M5
M30
%
