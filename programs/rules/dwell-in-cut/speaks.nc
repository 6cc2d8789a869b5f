%
O1 (a dwell in the middle of a slot)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X0. F100.
G4 P0.5 ; expect dwell-in-cut warning: a dwell of 0.5 s while the tool touches the part && a wall at its rim since the move at line 10
G1 X3.
G0 Z1.
M5
M30
%
