%
O1 (one digit less: the typical value fails, the whole band does not)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F89.1 ; expect flex-exceeds-step warning: the step of 4 µm && allowed 1.32 µm
G0 Z1.
M5
M30
%
