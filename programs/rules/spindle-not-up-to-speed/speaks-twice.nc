%
O1 (twice; the first cut begins the sooner)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
G1 X-1.8 F120. ; expect spindle-not-up-to-speed warning x2: the tool cuts from 0 s after line 9 asked for 20000 rpm, run-up takes 1.5 s && run-up from machine.spindle.run_up; the control does not wait for it (machine.spindle.waits) && a dwell of 1.5 s or more before this line | expect warm-up-missing error: fine cut with no valid warm-up: the spindle ran 0 s && counted from line 9 on, with no longer stop between && a warm-up before this line, measuring behind it; or machine.spindle.warm_up.where: before
G4 P0.1 ; expect dwell-in-cut warning: a dwell of 0.1 s while the tool touches the part && a wall at its rim since the move at line 10 && the dwell before the cut or behind the retract
G1 X3.
G0 Z1.
M5
M30
%
