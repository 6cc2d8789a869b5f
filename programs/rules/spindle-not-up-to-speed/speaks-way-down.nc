%
O1 (a little faster down)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-1. Y0. Z0.98
S20000 M3
G1 Z-0.02 F39.3 ; expect spindle-not-up-to-speed warning: the tool cuts from 1.496 s after line 8 asked for 20000 rpm, run-up takes 1.5 s && a dwell of 0.00382 s or more before this line | expect warm-up-missing error: fine cut with no valid warm-up: the spindle ran 0 s && counted from line 8 on, with no longer stop between
G0 Z1.
M5
M30
%
