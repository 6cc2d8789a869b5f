%
O1 (a tenth of a second less; roughing makes up for it ahead of the fine cut)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.1
S20000 M3 ; expect warm-up-short warning @1: warm-up of 719.9 s at 20000 rpm or more, 720 s at 20000 rpm asked && 0.1 s more && the spindle turns 719.9 s before it first cuts at line 11
G4 P718.4
G1 X3. F60.
G0 Z1.
X-3.
Z-0.12
G1 X3. F60.
G0 Z1.
M5
M30
%
