// SPDX-License-Identifier: GPL-3.0-or-later
package org.hingepin.app;

import android.app.Activity;
import android.content.ClipData;
import android.content.ContentProvider;
import android.content.ContentValues;
import android.content.Intent;
import android.database.Cursor;
import android.database.MatrixCursor;
import android.net.Uri;
import android.os.ParcelFileDescriptor;
import android.provider.OpenableColumns;
import java.io.File;
import java.io.FileNotFoundException;
import java.io.IOException;

/**
 * Lends the files of the folder "handover" in the app's cache, and no others, to the app that a person picked, to read
 * only. In our own few lines because the support library's provider is not among what Qt 6.4 brings along.
 */
public final class HandOver extends ContentProvider {
    /** Asks whom to give the file of that name to. The app calls it; {@code title} heads the question. */
    public static void share(Activity activity, String fileName, String title) {
        Uri uri = new Uri.Builder()
                .scheme("content")
                .authority(activity.getPackageName() + ".handover")
                .appendPath(fileName)
                .build();
        Intent send = new Intent(Intent.ACTION_SEND);
        send.setType(typeOf(fileName));
        send.putExtra(Intent.EXTRA_STREAM, uri);
        send.setClipData(ClipData.newRawUri(fileName, uri));
        send.addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION);
        activity.startActivity(Intent.createChooser(send, title));
    }

    @Override
    public boolean onCreate() {
        return true;
    }

    @Override
    public ParcelFileDescriptor openFile(Uri uri, String mode) throws FileNotFoundException {
        if (!"r".equals(mode)) throw new FileNotFoundException("to read only");
        return ParcelFileDescriptor.open(fileOf(uri), ParcelFileDescriptor.MODE_READ_ONLY);
    }

    @Override
    public String getType(Uri uri) {
        return typeOf(uri.getLastPathSegment());
    }

    @Override
    public Cursor query(Uri uri, String[] columns, String selection, String[] arguments, String order) {
        MatrixCursor cursor = new MatrixCursor(new String[] {OpenableColumns.DISPLAY_NAME, OpenableColumns.SIZE});
        try {
            File file = fileOf(uri);
            cursor.addRow(new Object[] {file.getName(), file.length()});
        } catch (FileNotFoundException missing) {
            // No row: there is nothing of that name.
        }
        return cursor;
    }

    @Override
    public Uri insert(Uri uri, ContentValues values) {
        throw new UnsupportedOperationException("to read only");
    }

    @Override
    public int delete(Uri uri, String selection, String[] arguments) {
        throw new UnsupportedOperationException("to read only");
    }

    @Override
    public int update(Uri uri, ContentValues values, String selection, String[] arguments) {
        throw new UnsupportedOperationException("to read only");
    }

    private File fileOf(Uri uri) throws FileNotFoundException {
        String name = uri.getLastPathSegment();
        if (name == null) throw new FileNotFoundException("no name");
        try {
            File folder = new File(getContext().getCacheDir(), "handover").getCanonicalFile();
            File file = new File(folder, name).getCanonicalFile();
            // A name may hold "..": only what lies in the folder itself is lent.
            if (folder.equals(file.getParentFile()) && file.isFile()) return file;
        } catch (IOException unreadable) {
            // As if it were not there.
        }
        throw new FileNotFoundException("nothing of that name is handed over");
    }

    private static String typeOf(String name) {
        if (name != null && name.endsWith(".pdf")) return "application/pdf";
        if (name != null && name.endsWith(".png")) return "image/png";
        if (name != null && name.endsWith(".json")) return "application/json";
        return "application/octet-stream";
    }
}
