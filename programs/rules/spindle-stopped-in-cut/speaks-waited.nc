%
O1 (the operator looks, and the program goes on)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.03
M0
G1 X3. F100. ; expect spindle-stopped-in-cut warning @1: cuts behind M0 at line 10, and no M3 or M4 stands between && S and M3 behind M0
G0 Z1.
M5
M30
%
