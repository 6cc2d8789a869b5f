%
O1 (how long the way down takes is not known: the feed is not)
G21 G90 G17 G94
G54
G0 X-1. Y0. Z0.98
; expect below macro-unread warning: a condition
IF [#1 GT 2] F20.
T3 M6
G43 H3
G0 X-1. Y0. Z0.98
S20000 M3
G1 Z-0.02 ; not checked spindle-not-up-to-speed: a feed move has no known feed
G0 Z1.
M5
M30
%
