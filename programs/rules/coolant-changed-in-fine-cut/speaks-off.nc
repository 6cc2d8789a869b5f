%
O1 (the second without)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
M72
G0 X-3. Y0. Z1.
M8
Z-0.02
G1 X3. F60.
G0 Z1.
X-3.
M9
Z-0.04
G1 X3. F60. ; expect coolant-changed-in-fine-cut warning @1: with no coolant, the first one at line 13 | expect coolant-off-in-cut warning @1: M8 before this line && off since line 16
G0 Z1.
M5
M30
%
