%
O1 (another speed takes as long)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
G4 P1.5
G1 X0. F60.
S30000
G1 X3. F60. ; expect spindle-not-up-to-speed warning @1: cuts from 0 s after line 12 asked for 30000 rpm && a dwell of 1.5 s or more before this line
G0 Z1.
M5
M30
%
