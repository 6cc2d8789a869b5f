%
O1 (the lower terrace is not cut)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F100. ; expect step-differs error: no terrace of stairs lies at the declared -8 µm, tolerance ±0.4 µm; the nearest lies at -4 µm
G0 Z1.
M5
M30
%
