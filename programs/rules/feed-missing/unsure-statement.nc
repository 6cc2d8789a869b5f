%
O1 (behind a condition the feed is one or the other)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. F100.
; expect below macro-unread warning: a condition
IF [#1 GT 2] F200.
G1 X1. Y0. Z1. ; not checked feed-missing: the feed is unknown since line 8
G0 Z2.
M30
%
