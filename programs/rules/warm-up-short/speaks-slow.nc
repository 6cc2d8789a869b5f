%
O1 (long enough, one revolution a minute too slow)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.1
S19999 M3 ; expect warm-up-short warning @1: warm-up of 801.5 s at 19999 rpm at most, 720 s at 20000 rpm asked && S20000 or more && the spindle turns 801.5 s before it first cuts at line 11
G4 P800.
G1 X3. F60.
G0 Z1.
M5
M30
%
