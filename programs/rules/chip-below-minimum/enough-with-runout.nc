%
O1 (a tenth more makes every second chip)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F15. ; expect feed-below-edge-radius warning: feed per tooth 0.25 µm, edge radius 1.5 µm && F90 or more at this speed, or a sharper edge && tool 3, 2 flutes: feed per tooth 15 mm/min / (30000 rpm × 2) = 0.25 µm && edge radius from tools.3.edge_radius
G0 Z1.
M5
M30
%
