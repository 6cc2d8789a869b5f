%
O1 (coolant switched off for good between the cuts)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S20000 M3
G0 X-3. Y0. Z1.
M8
Z-0.1
G1 X3. F60.
G0 Z1.
X-3.
M9
Z-0.2
G1 X3. F60. ; expect coolant-off-in-cut warning @1: tool 3 cuts with no coolant, and cut with flood coolant up to line 11 && off since line 14 && M8 before this line
G0 Z1.
M5
M30
%
