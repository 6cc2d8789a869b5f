%
O1 (no feature declared: the finest step, which the control rounds)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 X-3. Z1.
Y0.2
Z-0.0238 ; expect digits-below-resolution warning
G1 X3. ; expect budget-exceeds-tolerance warning: step of 4 µm may be off by && rounding 0.2 µm && stored 4 µm, written 3.8 µm
G0 Z1.
M5
M30
%
