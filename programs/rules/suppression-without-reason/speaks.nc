%
O1 (no reason, and no such rule)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
; expect below suppression-without-reason warning: feed-missing is to be accepted without a reason | expect below feed-missing error
G1 X1. (hairline: accept feed-missing)
; expect below suppression-without-reason warning: no rule has the name feed-mising | expect below feed-missing error x4
X2. F0. (hairline: accept feed-mising: a slip)
; expect below suppression-without-reason warning @9: no colon stands behind hairline
X3. F0. (hairline accept feed-missing: soft)
; expect below suppression-without-reason warning: accept is due, not ignore
X4. F0. (hairline: ignore feed-missing: soft)
; expect below suppression-without-reason warning: a comma, until end or a colon is due
X5. F0. (hairline: accept feed-missing known stuff)
M30
%
