//! The screens: they show what `app` says and send what was tapped. No arithmetic.
