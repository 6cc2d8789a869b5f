%
O1 (nobody starts the spindle)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100. ; expect spindle-stopped-in-cut error: the tool cuts and the spindle stands && stopped since line 5 && S and M3 before this move | expect warm-up-missing error: the spindle ran 0 s
G0 Z1.
M30
%
