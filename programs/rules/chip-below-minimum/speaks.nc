%
O1 (a full slot whose chip stays just below the minimum)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F26.9 ; expect chip-below-minimum error @1: minimum 0.45 µm && F27 or more at this speed makes a chip && tool 3, 2 flutes: feed per tooth 26.9 mm/min / (30000 rpm × 2) = 0.4483 µm && edge radius from tools.3.edge_radius, ratio from material.minimum_chip_ratio | expect feed-below-edge-radius warning @1: edge radius 1.5 µm && F90 or more at this speed, or a sharper edge && tool 3, 2 flutes: feed per tooth 26.9 mm/min / (30000 rpm × 2) = 0.4483 µm && edge radius from tools.3.edge_radius
G0 Z1.
M5
M30
%
