%
O1 (rule and reason)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
(hairline: accept feed-missing: the setter gives the feed)
G1 X1.
X2. M199 (hairline: accept feed-missing, code-unknown: the setter gives the feed, M199 is his)
(hairlines on the drawing are no matter for this)
M30
%
