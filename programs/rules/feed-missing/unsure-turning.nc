%
O1 (a feed per revolution, and no speed by which it could be told per minute)
G21 G90 G17 G95
G54
G0 X0. Y0. Z1.
G1 X1. F0.01 ; not checked feed-missing: the feed along the path is not known
M30
%
