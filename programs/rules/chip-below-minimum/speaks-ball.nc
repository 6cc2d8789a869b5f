%
O1 (a ball cuts thin chips at a shallow depth)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F134. ; expect chip-below-minimum error: largest chip 0.4444 µm, minimum 0.45 µm (0.3 × edge radius 1.5 µm) && F136 or more at this speed makes a chip && tool 3, 2 flutes: feed per tooth 134 mm/min / (30000 rpm × 2) = 2.233 µm && full slot: the chip reaches the feed per tooth, times 0.199 at a corner deeper than the cut && edge radius from tools.3.edge_radius, ratio from material.minimum_chip_ratio
G0 Z1.
M5
M30
%
