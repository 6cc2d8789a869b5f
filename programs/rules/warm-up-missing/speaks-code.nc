%
O1 (where the sheet names the code, no other one is it)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
M171 ; expect code-unknown warning
S20000 M3
G1 X3. F60. ; expect warm-up-missing error @1: ran 1.5 s && counted from line 10 on, with no longer stop between
G0 Z1.
M5
M30
%
