%
O1 (of a helix it is not known what lies in the air)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-1. Y0. Z0.98
S20000 M3
G2 X-1. Y0. Z-0.02 I0.5 J0. F60. ; expect cuts-air note: 85.16 % of the path at feed removes nothing, allowed 50 % && 2.808 mm of 3.297 mm of the operation; limits.air_share && rapids where nothing is cut, or another stock on the sheet | expect spindle-not-up-to-speed warning: the tool cuts from 0 s after line 8 asked for 20000 rpm, run-up takes 1.5 s && run-up from machine.spindle.run_up; the control does not wait for it (machine.spindle.waits) && a dwell of 1.5 s or more before this line | expect warm-up-missing error: fine cut with no valid warm-up: the spindle ran 0 s && counted from line 8 on, with no longer stop between && a warm-up before this line, measuring behind it; or machine.spindle.warm_up.where: before
G0 Z1.
M5
M30
%
