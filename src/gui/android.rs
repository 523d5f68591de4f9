//! The way in on Android. Not tried on a device: DEVELOPERS.md says what of it was checked.

use super::run;
use crate::app::start;
use slint::android::{AndroidApp, init};

/// Called by the activity once its window is there.
// The one name that the system looks up in the library; nothing else here is taken on trust.
#[allow(unsafe_code)]
#[unsafe(no_mangle)]
fn android_main(android: AndroidApp) {
    let Some(folder) = android.internal_data_path() else {
        return;
    };
    // Without a window there is nobody to tell.
    if init(android).is_err() {
        return;
    }
    if let Ok(mut app) = start(&folder, None, false) {
        app.use_activity(&folder);
        let _ = run(app);
    }
}
