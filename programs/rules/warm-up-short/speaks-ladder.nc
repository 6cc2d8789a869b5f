%
O1 (a ladder of speeds that ends a tenth of a second early; roughing makes up for it)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.1
S10000 M3 ; expect warm-up-short warning @1: 145.2 s at 20000 rpm or more, 720 s at 20000 rpm asked && 574.8 s more, or as a ladder 0.1 s more at 20000 rpm && the spindle turns 448.2 s before it first cuts at line 15 && a ladder of speeds: growth has 0.3302 µm to come to its end value at 20000 rpm, and would be a warm-up with 0.33 µm or less (limits.growth_share of the tightest tolerance of a step)
G4 P180.
S15000
G4 P120.
S20000
G4 P143.7
G1 X3. F60.
G0 Z1.
X-3.
Z-0.12
G1 X3. F60.
G0 Z1.
M5
M30
%
