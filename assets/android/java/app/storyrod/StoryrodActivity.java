package app.storyrod;

import android.app.NativeActivity;
import android.content.ActivityNotFoundException;
import android.content.ContentValues;
import android.content.Intent;
import android.net.Uri;
import android.os.Bundle;
import android.os.FileObserver;
import android.provider.MediaStore;
import android.widget.Toast;
import java.io.File;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/**
 * The window, and the way to the device's own camera. The program asks for a picture by writing a file named "snap" into
 * its folder "camera"; what was taken comes back into that folder, which the program watches as it does everywhere.
 */
public final class StoryrodActivity extends NativeActivity {
    private static final int PICTURE = 1;
    private static final String ASKED = "snap";
    private static final String PENDING = "pending";

    private File folder;
    private FileObserver asked;
    /** Where the camera writes; kept over a stop, for the system may end this program while the camera is open. */
    private Uri pending;

    @Override
    protected void onCreate(Bundle kept) {
        folder = new File(getFilesDir(), "camera");
        folder.mkdirs();
        if (kept != null && kept.getString(PENDING) != null) {
            pending = Uri.parse(kept.getString(PENDING));
        }
        asked = new FileObserver(folder, FileObserver.CLOSE_WRITE) {
            @Override
            public void onEvent(int event, String name) {
                if (ASKED.equals(name)) {
                    runOnUiThread(StoryrodActivity.this::openCamera);
                }
            }
        };
        asked.startWatching();
        super.onCreate(kept);
    }

    @Override
    protected void onSaveInstanceState(Bundle kept) {
        super.onSaveInstanceState(kept);
        if (pending != null) {
            kept.putString(PENDING, pending.toString());
        }
    }

    @Override
    protected void onDestroy() {
        asked.stopWatching();
        super.onDestroy();
    }

    private void openCamera() {
        new File(folder, ASKED).delete();
        ContentValues about = new ContentValues();
        about.put(MediaStore.MediaColumns.MIME_TYPE, "image/jpeg");
        about.put(MediaStore.MediaColumns.DISPLAY_NAME, "storyrod-" + System.currentTimeMillis() + ".jpg");
        try {
            pending = getContentResolver().insert(MediaStore.Images.Media.EXTERNAL_CONTENT_URI, about);
            Intent camera = new Intent(MediaStore.ACTION_IMAGE_CAPTURE);
            camera.putExtra(MediaStore.EXTRA_OUTPUT, pending);
            camera.addFlags(Intent.FLAG_GRANT_WRITE_URI_PERMISSION);
            startActivityForResult(camera, PICTURE);
        } catch (ActivityNotFoundException none) {
            forget();
            say("No camera program was found. Take in a picture by its file.");
        } catch (RuntimeException refused) {
            forget();
            say("The camera does not open: " + refused.getMessage());
        }
    }

    @Override
    protected void onActivityResult(int what, int result, Intent data) {
        super.onActivityResult(what, result, data);
        if (what != PICTURE || pending == null) {
            return;
        }
        Uri taken = pending;
        if (result != RESULT_OK) {
            forget();
            return;
        }
        pending = null;
        // The picture stays in the gallery as well; the program keeps its own copy.
        new Thread(() -> bring(taken)).start();
    }

    private void bring(Uri taken) {
        String name = Long.toString(System.currentTimeMillis());
        File part = new File(folder, name + ".part");
        try (InputStream from = getContentResolver().openInputStream(taken);
                OutputStream to = new FileOutputStream(part)) {
            byte[] bytes = new byte[1 << 16];
            for (int count = from.read(bytes); count >= 0; count = from.read(bytes)) {
                to.write(bytes, 0, count);
            }
        } catch (IOException | RuntimeException why) {
            part.delete();
            runOnUiThread(() -> say("The picture is in the gallery, but was not taken in: " + why.getMessage()));
            return;
        }
        // Renamed when it is whole, so that no half of one is taken in.
        if (!part.renameTo(new File(folder, name + ".jpg"))) {
            runOnUiThread(() -> say("The picture is in the gallery, but was not taken in."));
        }
    }

    /** The place that was made for a picture that nobody took. */
    private void forget() {
        if (pending != null) {
            getContentResolver().delete(pending, null, null);
            pending = null;
        }
    }

    private void say(String words) {
        Toast.makeText(this, words, Toast.LENGTH_LONG).show();
    }
}
