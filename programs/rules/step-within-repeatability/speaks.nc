%
O1 (two levels just within)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 Z1.
G0 X-3. Y0.2
Z-0.0208
G1 X3. ; expect step-within-repeatability warning: step 0.8 µm, twice the repeatability is 0.8 µm && from -0.02 mm to -0.0208 mm, machine.repeatability 0.4 µm
G0 Z1.
M5
M30
%
