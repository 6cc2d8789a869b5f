%
O1 (nothing to accept)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
; expect below suppression-unused note @10: nothing here needs feed-missing accepted
G1 X1. F1(hairline: accept feed-missing: there is a feed)
M30
%
