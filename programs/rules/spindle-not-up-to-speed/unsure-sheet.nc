%
O1 (without a run-up on the sheet)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
G1 X3. F60. ; not checked spindle-not-up-to-speed: machine.spindle.run_up is not on the sheet | expect warm-up-missing error: the spindle ran 0 s && counted from line 9 on, with no longer stop between
G0 Z1.
M5
M30
%
