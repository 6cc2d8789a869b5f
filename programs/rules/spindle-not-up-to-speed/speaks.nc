%
O1 (a tenth of a second earlier)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
G4 P1.4
G1 X3. F60. ; expect spindle-not-up-to-speed warning @1: cuts from 1.4 s after line 9 asked for 20000 rpm, run-up takes 1.5 s && a dwell of 0.1 s or more before this line
G0 Z1.
M5
M30
%
