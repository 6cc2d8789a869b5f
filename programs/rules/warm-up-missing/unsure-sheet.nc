%
O1 (what a warm-up is stands on the sheet)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
G1 X3. F60. ; not checked warm-up-missing: machine.spindle.warm_up.time is not on the sheet | not checked warm-up-missing: machine.spindle.warm_up.min_speed is not on the sheet
G0 Z1.
M5
M30
%
