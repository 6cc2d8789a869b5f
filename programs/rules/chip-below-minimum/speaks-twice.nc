%
O1 (a narrower cut makes a thinner chip)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F200.
Y0.02 F27.
X-3. F60. ; expect chip-below-minimum error x2: largest chip 0.4359 µm, minimum 0.45 µm (0.3 × edge radius 1.5 µm) && tool 3, 2 flutes: feed per tooth 60 mm/min / (30000 rpm × 2) = 1 µm && width of cut 0.02 mm: the chip reaches 0.4359 of the feed per tooth && edge radius from tools.3.edge_radius, ratio from material.minimum_chip_ratio && F62 or more at this speed makes a chip | expect feed-below-edge-radius warning x2: feed per tooth 1 µm, edge radius 1.5 µm && tool 3, 2 flutes: feed per tooth 60 mm/min / (30000 rpm × 2) = 1 µm && edge radius from tools.3.edge_radius && F90 or more at this speed, or a sharper edge
Y0.03 F27.
X3. F60.
G0 Z1.
M5
M30
%
