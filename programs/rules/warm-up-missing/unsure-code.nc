%
O1 (a code without meaning may be the warm-up where the sheet names none)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
M171 ; expect code-unknown warning | not checked warm-up-missing: may be the warm-up (machine.codes.warm_up would tell)
S20000 M3
G1 X3. F60.
G0 Z1.
M5
M30
%
