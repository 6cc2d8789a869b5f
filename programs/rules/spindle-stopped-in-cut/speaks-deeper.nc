%
O1 (back through a slot with the spindle off, below its floor)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
M5
Z-0.0201
X-3. ; expect spindle-stopped-in-cut error: the tool cuts and the spindle stands && stopped since line 11 && S and M3 before this move
G0 Z1.
M5
M30
%
