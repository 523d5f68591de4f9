package app.storyrod;

import android.app.NativeActivity;
import android.content.ActivityNotFoundException;
import android.content.ClipData;
import android.content.ContentValues;
import android.content.Intent;
import android.database.Cursor;
import android.net.Uri;
import android.os.Bundle;
import android.os.FileObserver;
import android.provider.MediaStore;
import android.provider.OpenableColumns;
import android.widget.Toast;
import java.io.File;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The window, and the way to what is the device's own. The program asks by a file in its folder "camera": "snap" for a
 * picture by the camera, "pick" for pictures that lie on the device, "fetch" for a file that was handed over. Pictures come
 * back into that folder, which the program watches as it does everywhere, a file into "in". What the program writes into
 * "out" is put into the downloads of the device.
 */
public final class StoryrodActivity extends NativeActivity {
    private static final int PICTURE = 1;
    private static final int CHOSEN = 2;
    private static final int FETCHED = 3;
    private static final String PENDING = "pending";

    private File camera;
    private File in;
    private File out;
    private FileObserver asked;
    private FileObserver handed;
    /** Where the camera writes; kept over a stop, for the system may end this program while the camera is open. */
    private Uri pending;

    @Override
    protected void onCreate(Bundle kept) {
        camera = new File(getFilesDir(), "camera");
        in = new File(getFilesDir(), "in");
        out = new File(getFilesDir(), "out");
        for (File folder : new File[] {camera, in, out}) {
            folder.mkdirs();
        }
        if (kept != null && kept.getString(PENDING) != null) {
            pending = Uri.parse(kept.getString(PENDING));
        }
        asked = new FileObserver(camera, FileObserver.CLOSE_WRITE) {
            @Override
            public void onEvent(int event, String name) {
                runOnUiThread(() -> answer(name));
            }
        };
        asked.startWatching();
        handed = new FileObserver(out, FileObserver.CLOSE_WRITE) {
            @Override
            public void onEvent(int event, String name) {
                handOut(name);
            }
        };
        handed.startWatching();
        // What was left when the system ended the program.
        String[] left = out.list();
        new Thread(() -> Arrays.stream(left == null ? new String[0] : left).forEach(this::handOut)).start();
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
        handed.stopWatching();
        super.onDestroy();
    }

    private void answer(String name) {
        if (!"snap".equals(name) && !"pick".equals(name) && !"fetch".equals(name)) {
            return;
        }
        new File(camera, name).delete();
        if ("snap".equals(name)) {
            openCamera();
        } else if ("pick".equals(name)) {
            choose("image/*", CHOSEN);
        } else {
            choose("*/*", FETCHED);
        }
    }

    private void openCamera() {
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
            say("No camera program was found. Take in a picture that lies on this device.");
        } catch (RuntimeException refused) {
            forget();
            say("The camera does not open: " + refused.getMessage());
        }
    }

    private void choose(String type, int what) {
        Intent choice = new Intent(Intent.ACTION_OPEN_DOCUMENT);
        choice.addCategory(Intent.CATEGORY_OPENABLE);
        choice.setType(type);
        choice.putExtra(Intent.EXTRA_ALLOW_MULTIPLE, true);
        try {
            startActivityForResult(choice, what);
        } catch (ActivityNotFoundException none) {
            say("No program was found that shows the files of this device.");
        }
    }

    @Override
    protected void onActivityResult(int what, int result, Intent data) {
        super.onActivityResult(what, result, data);
        if (what == PICTURE && pending != null) {
            if (result != RESULT_OK) {
                forget();
                return;
            }
            Uri taken = pending;
            pending = null;
            // The picture stays in the gallery as well; the program keeps its own copy.
            new Thread(() -> bring(taken, camera, "jpg")).start();
        } else if (what != PICTURE && result == RESULT_OK && data != null) {
            List<Uri> all = chosen(data);
            new Thread(() -> all.forEach(one -> bring(one, what == CHOSEN ? camera : in, ""))).start();
        }
    }

    /** Of several, all; of one, that. */
    private static List<Uri> chosen(Intent data) {
        List<Uri> all = new ArrayList<>();
        ClipData several = data.getClipData();
        for (int at = 0; several != null && at < several.getItemCount(); at++) {
            all.add(several.getItemAt(at).getUri());
        }
        if (all.isEmpty() && data.getData() != null) {
            all.add(data.getData());
        }
        return all;
    }

    private void bring(Uri one, File folder, String ends) {
        String now = Long.toString(System.currentTimeMillis());
        String name = ends.isEmpty() ? named(one) : now + "." + ends;
        // Two pictures may have one name; of a file that is handed over again the newer one counts.
        File whole = new File(folder, folder == in || !ends.isEmpty() ? name : now + "-" + name);
        File part = new File(folder, whole.getName() + ".part");
        try (InputStream from = getContentResolver().openInputStream(one);
                OutputStream to = new FileOutputStream(part)) {
            copy(from, to);
        } catch (IOException | RuntimeException why) {
            part.delete();
            notBrought(name, why.getMessage());
            return;
        }
        // Renamed when it is whole, so that no half of one is taken in.
        if (!part.renameTo(whole)) {
            notBrought(name, "it has no place");
        }
    }

    private void notBrought(String name, String why) {
        runOnUiThread(() -> say(name + " was not taken in, and stays where it is: " + why));
    }

    /** The name that a file has where it lies; it may hold anything. */
    private String named(Uri one) {
        String[] asked = {OpenableColumns.DISPLAY_NAME};
        String name = null;
        try (Cursor about = getContentResolver().query(one, asked, null, null, null)) {
            if (about != null && about.moveToFirst()) {
                name = about.getString(0);
            }
        } catch (RuntimeException refused) {
            // It comes without its name.
        }
        return name == null ? "file" : name.replaceAll("[^\\p{L}\\p{N}._ -]", "_");
    }

    private void handOut(String name) {
        File file = new File(out, name);
        ContentValues about = new ContentValues();
        about.put(MediaStore.MediaColumns.DISPLAY_NAME, name);
        Uri place = null;
        try (InputStream from = new FileInputStream(file)) {
            place = getContentResolver().insert(MediaStore.Downloads.EXTERNAL_CONTENT_URI, about);
            try (OutputStream to = getContentResolver().openOutputStream(place)) {
                copy(from, to);
            }
        } catch (IOException | RuntimeException why) {
            if (place != null) {
                getContentResolver().delete(place, null, null);
            }
            runOnUiThread(() -> say(name + " was not put into the downloads: " + why.getMessage()));
            return;
        }
        file.delete();
        runOnUiThread(() -> say(name + " is in the downloads."));
    }

    private static void copy(InputStream from, OutputStream to) throws IOException {
        byte[] bytes = new byte[1 << 16];
        for (int count = from.read(bytes); count >= 0; count = from.read(bytes)) {
            to.write(bytes, 0, count);
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
