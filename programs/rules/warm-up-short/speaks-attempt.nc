%
O1 (half a minute is one)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.1
S20000 M3 ; expect warm-up-short warning @1: warm-up of 30 s && 690 s more && the spindle turns 30 s before it first cuts at line 11
G4 P28.5
G1 X3. F60.
G0 Z1.
M5
M30
%
