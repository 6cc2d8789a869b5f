%
O1 (M0 counts as longer than any limit)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
M71
S20000 M3
M0
G1 X3. F60. M3 ; expect warm-up-missing error @1: ran 0 s && the last warm-up expired at line 11: the spindle stood longer than it outlives (1200 s, machine.spindle.warm_up.valid_for); M0 and M60 count as longer && counted from line 11 on, with no longer stop between
G0 Z1.
M5
M30
%
