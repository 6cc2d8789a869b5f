%
O1 (a step 0.3 µm too high, which fails unless the force is at the low end of its band)
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
Z-0.0243
G1 X3. ; expect budget-exceeds-tolerance warning: may be off by 0.8372 µm (0.7812 to 0.9195), fails above 0.8 µm
G0 Z1.
M5
M30
%
