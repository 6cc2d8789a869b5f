%
O1 (with the switch on the spindle does not turn in the dwell)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
/S20000 M3 ; expect warm-up-deletable warning @2: the fine cut at line 12 && the warm-up in a block of its own, without / and M1
G4 P718.5
S21000 M3
G1 X3. F60. ; expect warm-up-missing error @1: counted from line 11 on, with no longer stop between
G0 Z1.
M5
M30
%
