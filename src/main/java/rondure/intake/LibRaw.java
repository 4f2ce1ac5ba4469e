package rondure.intake;

import com.sun.jna.Callback;
import com.sun.jna.Library;
import com.sun.jna.Pointer;

/**
 * The functions of LibRaw's C API that are used, under their own names. A handle is a pointer to
 * libraw_data_t, whose first field is {@code ushort (*image)[4]}.
 */
interface LibRaw extends Library {

  /** No message of LibRaw's own on the error stream. */
  int SILENT = 3;

  /** Called by LibRaw when the picture data are damaged; the offset has no fixed width. */
  interface DataErrorHandler extends Callback {
    void invoke(Pointer data, Pointer file, Pointer offset);
  }

  String libraw_version();

  int libraw_versionNumber();

  String libraw_strerror(int error);

  Pointer libraw_init(int flags);

  void libraw_set_dataerror_handler(Pointer handle, DataErrorHandler handler, Pointer data);

  int libraw_open_file(Pointer handle, String file);

  int libraw_open_buffer(Pointer handle, Pointer bytes, long size);

  int libraw_unpack(Pointer handle);

  int libraw_raw2image(Pointer handle);

  int libraw_subtract_black(Pointer handle);

  int libraw_COLOR(Pointer handle, int row, int column);

  int libraw_get_raw_width(Pointer handle);

  int libraw_get_raw_height(Pointer handle);

  int libraw_get_iwidth(Pointer handle);

  int libraw_get_iheight(Pointer handle);

  int libraw_get_color_maximum(Pointer handle);

  Pointer libraw_get_iparams(Pointer handle);

  void libraw_close(Pointer handle);
}
