%
O1 (the tool comes back and the coolant is forgotten)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S20000 M3
G0 X-3. Y0. Z1.
M7
Z-0.1
G1 X3. F60.
G0 Z1.
X-3.
M9
T5 M6
T3 M6
G43 H3
S20000 M3
G0 X-3. Y0. Z1.
Z-0.2
G1 X3. F60. ; expect coolant-off-in-cut warning @1: up to line 11 && off since line 14 && M7 before this line
G0 Z1.
M5
M30
%
