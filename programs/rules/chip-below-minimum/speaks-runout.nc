%
O1 (runout thickens every second chip, still not enough)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F14.9 ; expect chip-below-minimum error: largest chip 0.4483 µm, minimum 0.45 µm (0.3 × edge radius 1.5 µm) && F15 or more at this speed makes a chip && tool 3, 2 flutes: feed per tooth 14.9 mm/min / (30000 rpm × 2) = 0.2483 µm && full slot: the chip reaches the feed per tooth, runout 0.2 µm counted in && edge radius from tools.3.edge_radius, ratio from material.minimum_chip_ratio | expect feed-below-edge-radius warning: feed per tooth 0.2483 µm, edge radius 1.5 µm && F90 or more at this speed, or a sharper edge && tool 3, 2 flutes: feed per tooth 14.9 mm/min / (30000 rpm × 2) = 0.2483 µm && edge radius from tools.3.edge_radius
G0 Z1.
M5
M30
%
