%
O1 (rule and reason)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
(hairline: accept feed-missing: the setter gives the feed)
G1 X1.
M30
%
