package castwell.web.http.guard;

import static java.nio.charset.StandardCharsets.UTF_8;

import castwell.capture.view.Json;
import castwell.web.http.guard.Refusals.Kind;
import castwell.web.http.problem.Problems;
import castwell.web.text.Speech;
import io.javalin.http.HttpStatus;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/** What can't even be read as a request is refused as a JSON problem too, and says nothing more. */
final class PlainErrors extends ErrorHandler {
  private final Refusals refusals;

  PlainErrors(Refusals refusals) {
    this.refusals = refusals;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    int code =
        request.getAttribute(ERROR_EXCEPTION) instanceof HttpException e
            ? e.getCode()
            : response.getStatus();
    if (code < 500) {
      refusals.count(Kind.BAD_REQUEST);
    }
    HttpStatus status = HttpStatus.forStatus(code);
    response.setStatus(code);
    response.getHeaders().put(HttpHeader.CONTENT_TYPE, "application/problem+json");
    response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
    String problem = Json.text(Problems.problem(status, sentence(status)));
    response.write(true, UTF_8.encode(problem), callback);
    return true;
  }

  private static String sentence(HttpStatus status) {
    return switch (status) {
      case URI_TOO_LONG -> Speech.TRADE.say("refused.address_too_long");
      case REQUEST_HEADER_FIELDS_TOO_LARGE -> Speech.TRADE.say("refused.header_too_large");
      case NOT_FOUND -> Speech.TRADE.say("refused.nothing_there");
      case HTTP_VERSION_NOT_SUPPORTED -> Speech.TRADE.say("refused.http_version");
      default -> Speech.TRADE.say("refused.no_http");
    };
  }
}
