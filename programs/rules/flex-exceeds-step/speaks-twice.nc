%
O1 (the second step by the larger part of what is allowed)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Y-0.5
Z-0.008
G1 X3. F90. ; expect flex-exceeds-step error x2: the tool's flex changes the step of 8 µm by 4.247 µm (2.657 to 6.624), allowed 2.64 µm
G0 Z1.
X-3. Y0.5
Z-0.004
G1 X3. F150.
G0 Z1.
M5
M30
%
