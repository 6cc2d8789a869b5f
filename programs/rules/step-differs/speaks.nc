%
O1 (the lower terrace half a micron too deep)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X0. F100.
Z-0.0085
X3. ; expect step-differs error: a terrace of stairs lies at -8.5 µm, declared -8 µm: off by 0.5 µm, tolerance ±0.4 µm
G0 Z1.
M5
M30
%
