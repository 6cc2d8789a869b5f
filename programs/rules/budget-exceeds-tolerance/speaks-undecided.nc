%
O1 (a step 0.1 µm too high, which the budget no longer shows to hold)
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
Z-0.0241
G1 X3. ; expect budget-exceeds-tolerance warning @1: step of 4.1 µm in pair may be off by 0.6302 µm && holds up to 0.6 µm (tolerance ±0.7 µm less gauge 0.1 µm) && rounding 0.1 µm
G0 Z1.
M5
M30
%
