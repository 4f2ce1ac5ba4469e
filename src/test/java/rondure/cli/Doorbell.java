package rondure.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.concurrent.atomic.AtomicInteger;

/** Listens on this machine and counts who calls. */
final class Doorbell implements AutoCloseable {
  private static final int LONGEST_WAIT_MILLISECONDS = 30_000;

  private final ServerSocket server;
  private final AtomicInteger rings = new AtomicInteger();

  Doorbell() throws IOException {
    server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    Thread listener = new Thread(this::listen, "doorbell");
    listener.setDaemon(true);
    listener.start();
  }

  private void listen() {
    while (!server.isClosed()) {
      try (Socket caller = server.accept()) {
        rings.incrementAndGet();
        caller.getOutputStream().write('\n');
      } catch (IOException closed) {
        return;
      }
    }
  }

  int port() {
    return server.getLocalPort();
  }

  int rings() {
    return rings.get();
  }

  /** Calls, and waits until it was answered. */
  void ringOnce() {
    try (Socket caller = new Socket(InetAddress.getLoopbackAddress(), port())) {
      caller.setSoTimeout(LONGEST_WAIT_MILLISECONDS);
      caller.getInputStream().read();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    server.close();
  }
}
