%
O1 (a full slot would not make the chip either)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
; expect below macro-unread warning: a condition
IF [#1 GT 2] GOTO 100
T3 M6
G43 H3
S30000 M3
G1 X0. Y0. F300.
G0 Z1.
X-3. Y0.1
Z-0.04
G1 X3. F26.9  ; expect chip-below-minimum error: largest chip 0.4483 µm, minimum 0.45 µm (0.3 × edge radius 1.5 µm) && tool 3, 2 flutes: feed per tooth 26.9 mm/min / (30000 rpm × 2) = 0.4483 µm && width of cut not known: a full slot is the upper bound && edge radius from tools.3.edge_radius, ratio from material.minimum_chip_ratio && F27 or more at this speed makes a chip | expect feed-below-edge-radius warning: feed per tooth 0.4483 µm, edge radius 1.5 µm && tool 3, 2 flutes: feed per tooth 26.9 mm/min / (30000 rpm × 2) = 0.4483 µm && edge radius from tools.3.edge_radius && F90 or more at this speed, or a sharper edge
G0 Z1.
M5
M30
%
