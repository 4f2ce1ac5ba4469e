package rondure.cli;

import com.sun.jdi.AbsentInformationException;
import com.sun.jdi.BooleanValue;
import com.sun.jdi.Bootstrap;
import com.sun.jdi.IncompatibleThreadStateException;
import com.sun.jdi.Location;
import com.sun.jdi.Method;
import com.sun.jdi.ReferenceType;
import com.sun.jdi.StackFrame;
import com.sun.jdi.ThreadReference;
import com.sun.jdi.VMDisconnectedException;
import com.sun.jdi.VirtualMachine;
import com.sun.jdi.connect.Connector;
import com.sun.jdi.connect.IllegalConnectorArgumentsException;
import com.sun.jdi.connect.ListeningConnector;
import com.sun.jdi.event.BreakpointEvent;
import com.sun.jdi.event.ClassPrepareEvent;
import com.sun.jdi.event.Event;
import com.sun.jdi.event.EventSet;
import com.sun.jdi.request.ClassPrepareRequest;
import com.sun.jdi.request.EventRequest;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Holds a command before each of its operations on files, by the Java debugger's interface, so that
 * it can be killed exactly there.
 */
final class FileOperations implements AutoCloseable {
  /** Whatever makes, fills, moves or removes a file or folder ends in one of these. */
  private static final Map<String, Set<String>> METHODS =
      Map.of(
          "java.nio.file.Files",
          Set.of(
              "createDirectory",
              "createTempDirectory",
              "newOutputStream",
              "copy",
              "move",
              "delete",
              "deleteIfExists"),
          "sun.nio.ch.FileChannelImpl",
          Set.of("open", "write"));

  private static final String OURS = "rondure.";

  private final ListeningConnector connector;
  private final Map<String, Connector.Argument> arguments;
  private final String address;
  private String last = "";

  private FileOperations(ListeningConnector connector) throws IOException {
    this.connector = connector;
    this.arguments = connector.defaultArguments();
    arguments.get("localAddress").setValue("127.0.0.1");
    try {
      this.address = connector.startListening(arguments);
    } catch (IllegalConnectorArgumentsException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Ready for a command to be started with {@link #javaOption()}. */
  static FileOperations listening() throws IOException {
    return new FileOperations(
        Bootstrap.virtualMachineManager().listeningConnectors().stream()
            .filter(one -> one.name().equals("com.sun.jdi.SocketListen"))
            .findFirst()
            .orElseThrow());
  }

  /** By which the command finds its way here, and waits. */
  String javaOption() {
    String port = address.substring(address.lastIndexOf(':') + 1);
    return "-agentlib:jdwp=transport=dt_socket,server=n,suspend=y,address=127.0.0.1:" + port;
  }

  /** What can be done at an operation, before it is carried out. */
  interface AtOperation {
    /**
     * @param what is to be done, and for which line of the program
     * @return false when the command is not to be followed any more, and stays where it is
     */
    boolean mayGoOn(String what);
  }

  /** Follows the command until it ends or is let go. */
  void follow(AtOperation action) throws IOException, InterruptedException {
    try {
      VirtualMachine machine = connector.accept(arguments);
      watch(machine);
      machine.resume();
      boolean on = true;
      while (on) {
        on = handled(machine, action);
      }
    } catch (VMDisconnectedException ended) {
      // The command is over.
    } catch (IllegalConnectorArgumentsException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void watch(VirtualMachine machine) {
    for (String name : METHODS.keySet()) {
      machine.classesByName(name).forEach(type -> hold(machine, type));
      ClassPrepareRequest request = machine.eventRequestManager().createClassPrepareRequest();
      request.addClassFilter(name);
      request.setSuspendPolicy(EventRequest.SUSPEND_ALL);
      request.enable();
    }
  }

  private static void hold(VirtualMachine machine, ReferenceType type) {
    Set<String> names = METHODS.get(type.name());
    for (Method method : type.methods()) {
      if (names.contains(method.name()) && !method.isAbstract() && !method.isNative()) {
        EventRequest request =
            machine.eventRequestManager().createBreakpointRequest(method.location());
        request.setSuspendPolicy(EventRequest.SUSPEND_ALL);
        request.enable();
      }
    }
  }

  private boolean handled(VirtualMachine machine, AtOperation action) throws InterruptedException {
    EventSet events = machine.eventQueue().remove();
    for (Event event : events) {
      if (event instanceof ClassPrepareEvent prepared) {
        hold(machine, prepared.referenceType());
      } else if (event instanceof BreakpointEvent reached) {
        Optional<String> what = operation(reached);
        if (what.isPresent() && !isMoreOfTheSame(what.get())) {
          last = what.get();
          if (!action.mayGoOn(last)) {
            return false;
          }
        }
      }
    }
    events.resume();
    return true;
  }

  /** A file is written in many pieces, of which only the first counts. */
  private boolean isMoreOfTheSame(String what) {
    return what.startsWith("write ") && what.equals(last);
  }

  /** What is done and who asked for it; empty where nobody of ours did, or only reads. */
  private static Optional<String> operation(BreakpointEvent reached) {
    try {
      Location place = reached.location();
      List<StackFrame> frames = frames(reached.thread());
      if (place.method().name().equals("open") && !mayWrite(frames.get(0))) {
        return Optional.empty();
      }
      for (StackFrame frame : frames) {
        Location asker = frame.location();
        if (asker.declaringType().name().startsWith(OURS)) {
          return Optional.of(
              place.method().name() + " for " + asker.sourceName() + ":" + asker.lineNumber());
        }
      }
      return Optional.empty();
    } catch (AbsentInformationException unknown) {
      return Optional.empty();
    }
  }

  /** The fourth argument of {@code FileChannelImpl.open} tells. */
  private static boolean mayWrite(StackFrame open) {
    return ((BooleanValue) open.getArgumentValues().get(3)).value();
  }

  private static List<StackFrame> frames(ThreadReference thread) {
    try {
      return thread.frames();
    } catch (IncompatibleThreadStateException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() throws IOException {
    try {
      connector.stopListening(arguments);
    } catch (IllegalConnectorArgumentsException e) {
      throw new IllegalStateException(e);
    }
  }
}
